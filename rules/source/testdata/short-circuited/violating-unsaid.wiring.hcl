# A reversing switch of which it is not written whether it makes before it breaks.

system "dunlin" {
  practice = ["general"]
  ambient = "25 C"
}

source "agm" { # want warning not-proven `The two poles of "agm" are joined with no load between them, with "rv" at fwd>rev \(overla`
  label = "agm"
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "100 Ah"
  resistance = "6 mohm"
  short_circuit = "2 kA"
  discharge_limit = "200 A"
  charge_limit = "100 A"
  role = "house"
}

fuse "fa" {
  label = "fa"
  kind = "terminal"
  rating = "60 A"
  voltage_rating = "125 V dc"
  interrupting = "20 kA"
  on = source.agm
}

switch "rv" {
  label = "rv"
  terminals = ["p", "n", "a", "b"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  any_order = false
  position "fwd" { joins = [["p", "a"], ["n", "b"]] }
  position "rev" { joins = [["p", "b"], ["n", "a"]] }
}

conductor "w1" {
  from = fuse.fa.load.pos
  to = switch.rv.p.pos
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
  polarity = "positive"
}

conductor "w2" {
  from = source.agm.neg
  to = switch.rv.n.pos
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
  polarity = "positive"
}

load "mot" {
  label = "mot"
  kind = "motor"
  draw = "2 A"
  behavior = "constant-current"
  voltage_min = "9 V"
  voltage_max = "16 V"
  rated_voltage = "12 V"
  critical = "none"
  own_battery = false
}

conductor "w3" {
  from = switch.rv.a.pos
  to = load.mot.pos
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
  polarity = "positive"
}

conductor "w4" {
  from = switch.rv.b.pos
  to = load.mot.neg
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
  polarity = "positive"
}
