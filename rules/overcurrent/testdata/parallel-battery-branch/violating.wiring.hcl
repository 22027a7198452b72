# Three strong packs on one bus in the saloon, no device in any branch; the third comes in by a switch.

system "t" {
  practice = ["general"]
}

compartment "saloon" {
  occupied = true
}

bus "bank" {
}

source "a" { # want danger "If \"a\" fails inside, \"b\" and \"c\" feed it"
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

source "b" { # want danger "\"a\" and \"c\" feed it"
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

source "c" { # want danger "\"a\" and \"b\" feed it"
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

switch "tie" {
  terminals  = ["bank", "third"]
  transition = "break-before-make"

  position "off" {
  }

  position "on" {
    joins = [["bank", "third"]]
  }
}

conductor "l1" {
  from   = source.a
  to     = bus.bank
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "l2" {
  from   = bus.bank
  to     = source.b
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "l3" {
  from   = bus.bank
  to     = switch.tie.bank
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "l4" {
  from   = switch.tie.third
  to     = source.c
  size   = "2 AWG"
  length = "0.5 m"
}
