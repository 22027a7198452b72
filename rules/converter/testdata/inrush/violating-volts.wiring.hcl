# Its own figure is larger than volts over resistance: what the battery drives into the capacitors counts.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "bank" {
  label         = "Bank"
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "12 V"
  capacity      = "100 Ah"
}

fuse "main" {
  label  = "Main fuse"
  kind   = "class-t"
  rating = "300 A"
  on     = source.bank
}

switch "off" {
  label     = "Disconnect"
  kind      = "disconnect"
  terminals = ["bank", "inverter"]
  rating    = "100 A"

  position "off" {}
  position "on" { joins = [["bank", "inverter"]] }
}

conductor "a" {
  from       = fuse.main.load
  to         = switch.off.bank
  size       = "2 AWG"
  length     = "3 m"
  insulation = "105 C"
}

conductor "b" {
  from       = switch.off.inverter
  to         = converter.inverter.in
  size       = "2 AWG"
  length     = "3 m"
  insulation = "105 C"
}

converter "inverter" { # want caution "takes a peak of 1 \\d+ A.*bears 400 A"
  label      = "Inverter"
  kind       = "inverter"
  rated      = "2000 W"
  efficiency = 0.9
  inrush     = "9000 A"

  output {
    voltage     = "120 V ac"
    current_max = "17 A"
  }
}
