# The contact bears it; the fuse does not for long.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "bank" {
  label         = "Bank"
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "12 V"
  capacity      = "300 Ah"
}

fuse "main" {
  label  = "Main fuse"
  kind   = "class-t"
  rating = "100 A"
  on     = source.bank
}

switch "off" {
  label     = "Disconnect"
  kind      = "disconnect"
  terminals = ["bank", "inverter"]
  rating    = "400 A"

  position "off" {}
  position "on" { joins = [["bank", "inverter"]] }
}

conductor "a" {
  from       = fuse.main.load
  to         = switch.off.bank
  size       = "2/0 AWG"
  length     = "0.5 m"
  insulation = "105 C"
}

conductor "b" {
  from       = switch.off.inverter
  to         = converter.inverter.in
  size       = "2/0 AWG"
  length     = "0.5 m"
  insulation = "105 C"
}

converter "inverter" { # want caution "\"Main fuse\" bears 1 000 A"
  label      = "Inverter"
  kind       = "inverter"
  rated      = "2000 W"
  efficiency = 0.9
  inrush     = "1200 A"

  output {
    voltage     = "120 V ac"
    current_max = "17 A"
  }
}
