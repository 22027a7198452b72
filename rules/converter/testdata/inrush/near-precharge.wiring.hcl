# Off, then a long thin wire that charges the capacitors, then on: the last throw makes nothing.

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
  terminals = ["bank", "slow", "inverter"]
  rating    = "100 A"

  position "off" {}
  position "charge" { joins = [["bank", "slow"]] }
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

conductor "slow" {
  from       = switch.off.slow
  to         = converter.inverter.in
  size       = "18 AWG"
  length     = "40 m"
  insulation = "105 C"
}

converter "inverter" {
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
