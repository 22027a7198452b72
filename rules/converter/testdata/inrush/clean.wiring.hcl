# Nothing parts it from the battery but a fuse; and a soft start is written.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "bank" {
  label         = "Bank"
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "48 V"
  capacity      = "300 Ah"
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

converter "inverter" {
  label      = "Inverter"
  kind       = "inverter"
  rated      = "2000 W"
  efficiency = 0.9
  inrush     = "40 A"

  output {
    voltage     = "120 V ac"
    current_max = "17 A"
  }
}

converter "always" {
  label = "Always on"
  kind  = "dc-dc"
  rated = "1500 W"

  output {
    voltage     = "12 V"
    current_max = "120 A"
  }
}

conductor "c" {
  from       = fuse.main.load
  to         = converter.always.in
  size       = "2/0 AWG"
  length     = "0.5 m"
  insulation = "105 C"
}
