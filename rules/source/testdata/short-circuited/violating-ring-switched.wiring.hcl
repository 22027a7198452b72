# A hard one: two batteries head to tail, in a ring that one switch closes.

system "dunlin" {
  practice = ["general"]
  ambient = "25 C"
}

source "b0" { # want danger `"b0" and "b1" are joined head to tail in a ring with no load between them, as if one were `
  label = "b0"
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "100 Ah"
  resistance = "6 mohm"
  short_circuit = "2 kA"
  discharge_limit = "200 A"
  charge_limit = "100 A"
  role = "house"
  removable = false
}

source "b1" { # want danger `"b1" and "b0" are joined head to tail in a ring with no load between them, as if one were `
  label = "b1"
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

switch "k" {
  label = "k"
  terminals = ["a", "b"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

conductor "w1" {
  from = source.b0.pos
  to = source.b1.neg
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
  polarity = "positive"
}

conductor "w2" {
  from = source.b1.pos
  to = switch.k.a.pos
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
  polarity = "positive"
}

conductor "w3" {
  from = switch.k.b.pos
  to = source.b0.neg
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
  polarity = "positive"
}
