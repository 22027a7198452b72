# A habit keeps the converter away from the pack, and whether it limits is not written.

system "t" {
  practice = ["general"]
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "truck" {
  label     = "Truck"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
  role      = "starting"
}

converter "boost" {
  label          = "Boost"
  kind           = "dc-dc"
  isolated       = false
  blocks_reverse = true

  output {
    voltage     = "14.4 V"
    current_max = "30 A"
  }
}

switch "in" {
  terminals = ["a", "b"]

  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

switch "out" {
  terminals = ["a", "b"]

  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

conductor "in" {
  from = source.truck
  to   = switch.in.a
  size = "8 AWG"
}

conductor "a" {
  from = switch.in.b
  to   = converter.boost.in
  size = "8 AWG"
}

conductor "b" {
  from = converter.boost.out
  to   = switch.out.a
  size = "8 AWG"
}

conductor "out" {
  from = switch.out.b
  to   = source.pack
  size = "8 AWG"
}

interlock "never_both" { # want not-proven caution "Without \"never_both\" there may be a warning: charging/lithium-meets-alternator of \"Pack\", and 1 more"
  never = [{ switch.in = "on", switch.out = "on" }]
  by    = "habit"
}
