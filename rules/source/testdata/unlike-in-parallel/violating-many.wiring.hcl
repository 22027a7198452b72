# A hard one: twelve selectors and ten interlocks, more states than are listed, and of those that are none is allowed.

system "dunlin" {
  practice = ["general"]
  ambient = "25 C"
}

source "b0" { # want warning `"b0" \(12\.8 V rested full\) and "b1" \(13\.6 V rested full\) are joined with "s6" at b an`
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
}

fuse "f0" {
  label = "f0"
  kind = "terminal"
  rating = "60 A"
  voltage_rating = "125 V dc"
  interrupting = "20 kA"
  on = source.b0
}

source "b1" { # want `"b0" \(12\.8 V rested full\) and "b1" \(13\.6 V rested full\) are joined with "s6" at b an`
  label = "b1"
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

fuse "f1" {
  label = "f1"
  kind = "terminal"
  rating = "60 A"
  voltage_rating = "125 V dc"
  interrupting = "20 kA"
  on = source.b1
}

bus "top" {
  label = "top"
  rating = "300 A"
}

bus "bot" {
  label = "bot"
  rating = "300 A"
}

conductor "w1" {
  from = fuse.f0.load
  to = bus.top
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w2" {
  from = fuse.f1.load
  to = bus.bot
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

switch "s0" {
  label = "s0"
  terminals = ["x", "y", "z"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "a" {}
  position "b" { joins = [["x", "y"]] }
  position "c" { joins = [["x", "z"]] }
}

switch "s1" {
  label = "s1"
  terminals = ["x", "y", "z"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "a" {}
  position "b" { joins = [["x", "y"]] }
  position "c" { joins = [["x", "z"]] }
}

switch "s2" {
  label = "s2"
  terminals = ["x", "y", "z"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "a" {}
  position "b" { joins = [["x", "y"]] }
  position "c" { joins = [["x", "z"]] }
}

switch "s3" {
  label = "s3"
  terminals = ["x", "y", "z"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "a" {}
  position "b" { joins = [["x", "y"]] }
  position "c" { joins = [["x", "z"]] }
}

switch "s4" {
  label = "s4"
  terminals = ["x", "y", "z"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "a" {}
  position "b" { joins = [["x", "y"]] }
  position "c" { joins = [["x", "z"]] }
}

switch "s5" {
  label = "s5"
  terminals = ["x", "y", "z"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "a" {}
  position "b" { joins = [["x", "y"]] }
  position "c" { joins = [["x", "z"]] }
}

switch "s6" {
  label = "s6"
  terminals = ["x", "y", "z"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "a" {}
  position "b" { joins = [["x", "y"]] }
  position "c" { joins = [["x", "z"]] }
}

switch "s7" {
  label = "s7"
  terminals = ["x", "y", "z"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "a" {}
  position "b" { joins = [["x", "y"]] }
  position "c" { joins = [["x", "z"]] }
}

switch "s8" {
  label = "s8"
  terminals = ["x", "y", "z"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "a" {}
  position "b" { joins = [["x", "y"]] }
  position "c" { joins = [["x", "z"]] }
}

switch "s9" {
  label = "s9"
  terminals = ["x", "y", "z"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "a" {}
  position "b" { joins = [["x", "y"]] }
  position "c" { joins = [["x", "z"]] }
}

switch "s10" {
  label = "s10"
  terminals = ["x", "y", "z"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "a" {}
  position "b" { joins = [["x", "y"]] }
  position "c" { joins = [["x", "z"]] }
}

switch "s11" {
  label = "s11"
  terminals = ["x", "y", "z"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "a" {}
  position "b" { joins = [["x", "y"]] }
  position "c" { joins = [["x", "z"]] }
}

bus "u0" {
  label = "u0"
  rating = "300 A"
}

bus "u1" {
  label = "u1"
  rating = "300 A"
}

bus "u2" {
  label = "u2"
  rating = "300 A"
}

bus "u3" {
  label = "u3"
  rating = "300 A"
}

bus "u4" {
  label = "u4"
  rating = "300 A"
}

bus "u5" {
  label = "u5"
  rating = "300 A"
}

conductor "w3" {
  from = bus.u3
  to = switch.s0.x
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w4" {
  from = switch.s0.y
  to = bus.u5
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w5" {
  from = switch.s0.z
  to = bus.u0
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w6" {
  from = bus.u2
  to = switch.s1.x
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w7" {
  from = switch.s1.y
  to = bus.u4
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w8" {
  from = switch.s1.z
  to = bus.u3
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w9" {
  from = bus.u3
  to = switch.s2.x
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w10" {
  from = switch.s2.y
  to = bus.u2
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w11" {
  from = switch.s2.z
  to = bus.u5
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w12" {
  from = bus.u2
  to = switch.s3.x
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w13" {
  from = switch.s3.y
  to = bus.u4
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w14" {
  from = switch.s3.z
  to = bus.u1
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w15" {
  from = bus.u4
  to = switch.s4.x
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w16" {
  from = switch.s4.y
  to = bus.u1
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w17" {
  from = switch.s4.z
  to = bus.u2
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w18" {
  from = bus.u1
  to = switch.s5.x
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w19" {
  from = switch.s5.y
  to = bus.u0
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w20" {
  from = switch.s5.z
  to = bus.u2
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w21" {
  from = bus.u4
  to = switch.s6.x
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w22" {
  from = switch.s6.y
  to = bus.u5
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w23" {
  from = switch.s6.z
  to = bus.u1
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w24" {
  from = bus.u2
  to = switch.s7.x
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w25" {
  from = switch.s7.y
  to = bus.u0
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w26" {
  from = switch.s7.z
  to = bus.u4
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w27" {
  from = bus.u5
  to = switch.s8.x
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w28" {
  from = switch.s8.y
  to = bus.u2
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w29" {
  from = switch.s8.z
  to = bus.u3
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w30" {
  from = bus.u4
  to = switch.s9.x
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w31" {
  from = switch.s9.y
  to = bus.u0
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w32" {
  from = switch.s9.z
  to = bus.u2
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w33" {
  from = bus.u3
  to = switch.s10.x
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w34" {
  from = switch.s10.y
  to = bus.u2
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w35" {
  from = switch.s10.z
  to = bus.u1
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w36" {
  from = bus.u4
  to = switch.s11.x
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w37" {
  from = switch.s11.y
  to = bus.u3
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w38" {
  from = switch.s11.z
  to = bus.u5
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w39" {
  from = bus.top
  to = bus.u0
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w40" {
  from = bus.bot
  to = bus.u5
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

fuse "f_alarm" {
  label = "f_alarm"
  kind = "terminal"
  rating = "5 A"
  voltage_rating = "125 V dc"
  interrupting = "20 kA"
  on = bus.top
}

conductor "w41" {
  from = fuse.f_alarm.load
  to = load.alarm
  size = "12 AWG"
  length = "1 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

load "alarm" {
  label = "alarm"
  kind = "alarm"
  draw = "0.1 A"
  behavior = "constant-current"
  voltage_min = "9 V"
  voltage_max = "16 V"
  rated_voltage = "12 V"
  critical = "life-safety"
  own_battery = false
}

interlock "i0" {
  never = [{ switch.s8 = "a", switch.s4 = "c" }]
  by = "hardware"
}

interlock "i1" {
  never = [{ switch.s0 = "c", switch.s1 = "b" }]
  by = "hardware"
}

interlock "i2" {
  never = [{ switch.s11 = "c", switch.s10 = "a" }]
  by = "hardware"
}

interlock "i3" {
  never = [{ switch.s9 = "b", switch.s7 = "a" }]
  by = "hardware"
}

interlock "i4" {
  never = [{ switch.s11 = "c", switch.s5 = "a" }]
  by = "hardware"
}

interlock "i5" {
  never = [{ switch.s3 = "a", switch.s9 = "a" }]
  by = "hardware"
}

interlock "i6" {
  never = [{ switch.s2 = "b", switch.s8 = "a" }]
  by = "hardware"
}

interlock "i7" {
  never = [{ switch.s1 = "c", switch.s5 = "b" }]
  by = "hardware"
}

interlock "i8" {
  never = [{ switch.s1 = "c", switch.s4 = "b" }]
  by = "hardware"
}

interlock "i9" {
  never = [{ switch.s11 = "c", switch.s1 = "b" }]
  by = "hardware"
}
