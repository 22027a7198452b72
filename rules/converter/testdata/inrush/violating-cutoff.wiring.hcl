# No switch but the one inside the battery: it opens again at what it closes onto.

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

  bms {
    opens_above = "500 A"
  }
}

fuse "main" {
  label  = "Main fuse"
  kind   = "class-t"
  rating = "300 A"
  on     = source.bank
}

conductor "a" {
  from       = fuse.main.load
  to         = converter.inverter.in
  size       = "2/0 AWG"
  length     = "0.5 m"
  insulation = "105 C"
}

converter "inverter" { # want caution "\"Bank\" bears 500 A"
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
