# A hard one: the switch in the negative has to be on too.

system "dunlin" {
  practice = ["vehicle"]
  ambient = "25 C"
}

source "s" {
  label = "s"
  kind = "battery"
  chemistry = "flooded"
  voltage = "12 V"
  capacity = "100 Ah"
  resistance = "6 mohm"
  short_circuit = "2 kA"
  discharge_limit = "200 A"
  charge_limit = "100 A"
  role = "starting"
}

source "l" { # want danger `Lithium battery "l" meets the alternator "alt" with nothing between that limits current\. `
  label = "l"
  kind = "battery"
  chemistry = "lifepo4"
  voltage = "12.8 V"
  capacity = "100 Ah"
  resistance = "6 mohm"
  short_circuit = "2 kA"
  discharge_limit = "200 A"
  charge_limit = "100 A"
  role = "house"
  cold_charge_cutoff = true
  bms {
    warns_before_cutoff = false
    opens_charge_below = "0 C"
  }
}

fuse "fs" {
  label = "fs"
  kind = "terminal"
  rating = "60 A"
  voltage_rating = "125 V dc"
  interrupting = "20 kA"
  on = source.s
}

fuse "fl" {
  label = "fl"
  kind = "terminal"
  rating = "60 A"
  voltage_rating = "125 V dc"
  interrupting = "20 kA"
  on = source.l
}

source "alt" {
  label = "alt"
  kind = "alternator"
  rated = "90 A"
  regulated_voltage = "14.2 V"
  voltage = "12 V"
}

conductor "w1" {
  from = source.alt
  to = source.s
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

switch "neg" {
  label = "neg"
  terminals = ["a", "b"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

switch "pos" {
  label = "pos"
  terminals = ["a", "b"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

conductor "w2" {
  from = fuse.fs.load.pos
  to = switch.pos.a.pos
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
  polarity = "positive"
}

conductor "w3" {
  from = switch.pos.b.pos
  to = fuse.fl.load.pos
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
  polarity = "positive"
}

conductor "w4" {
  from = source.s.neg
  to = switch.neg.a.pos
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
  polarity = "negative"
}

conductor "w5" {
  from = switch.neg.b.pos
  to = source.l.neg
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
  polarity = "negative"
}

bus "m" {
  label = "m"
  rating = "300 A"
}

fuse "f_x" {
  label = "f_x"
  kind = "terminal"
  rating = "5 A"
  voltage_rating = "125 V dc"
  interrupting = "20 kA"
  on = source.l
}

conductor "w6" {
  from = fuse.f_x.load
  to = load.x
  size = "12 AWG"
  length = "1 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

load "x" {
  label = "x"
  kind = "light"
  draw = "2 A"
  behavior = "constant-current"
  voltage_min = "9 V"
  voltage_max = "16 V"
  rated_voltage = "12 V"
  critical = "none"
  own_battery = false
}
