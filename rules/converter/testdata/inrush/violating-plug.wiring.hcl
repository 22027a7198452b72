# A plug is not made to make anything: its rating is all it bears. The pack lifts out with it.

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
  removable     = true
}

fuse "main" {
  label  = "Main fuse"
  kind   = "class-t"
  rating = "300 A"
  on     = source.bank
}

connector "plug" {
  label   = "Pack plug"
  rating  = "175 A"
  follows = source.bank
}

conductor "a" {
  from       = fuse.main.load
  to         = connector.plug.fixed
  size       = "2/0 AWG"
  length     = "0.5 m"
  insulation = "105 C"
}

conductor "b" {
  from       = connector.plug.free
  to         = converter.inverter.in
  size       = "2/0 AWG"
  length     = "0.5 m"
  insulation = "105 C"
}

converter "inverter" { # want caution "\"Pack plug\" bears 175 A"
  label      = "Inverter"
  kind       = "inverter"
  rated      = "2000 W"
  efficiency = 0.9
  inrush     = "300 A"

  output {
    voltage     = "120 V ac"
    current_max = "17 A"
  }
}
