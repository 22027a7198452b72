# Running lights behind a step-down: they go dark with the main that the heater shares. What a battery of its own feeds too does not.

system "boat" {
  practice = "us-boat"
}

source "bank" {
  kind       = "battery"
  chemistry  = "lifepo4"
  voltage    = "24 V"
  capacity   = "100 Ah"
  resistance = "20 mohm"
}

fuse "main" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.bank
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "6 AWG"
  length = "1 m"
}

bus "panel" {
}

fuse "heater" { # want caution "A short behind \"heater\" .20 A. may open \"main\" .30 A. first, which also feeds \"running\"\\.$"
  kind   = "terminal"
  rating = "20 A"
  on     = bus.panel
}

conductor "heater" {
  from   = fuse.heater.load
  to     = load.heater
  size   = "10 AWG"
  length = "1 m"
}

load "heater" {
  draw     = "15 A"
  critical = "none"
}

conductor "down" {
  from   = bus.panel
  to     = converter.down.in
  size   = "12 AWG"
  length = "1 m"
}

converter "down" {
  kind           = "dc-dc"
  blocks_reverse = true
  limits_current = true

  output {
    voltage     = "12 V"
    current_max = "10 A"
  }
}

conductor "running" {
  from   = converter.down.out
  to     = load.running
  size   = "12 AWG"
  length = "1 m"
}

load "running" {
  draw     = "3 A"
  critical = "navigation"
}

conductor "charge" {
  from   = bus.panel
  to     = converter.charge.in
  size   = "12 AWG"
  length = "1 m"
}

converter "charge" {
  kind           = "dc-dc"
  blocks_reverse = true
  limits_current = true

  output {
    voltage     = "14.4 V"
    current_max = "10 A"
  }
}

conductor "spare" {
  from   = converter.charge.out
  to     = source.spare
  size   = "12 AWG"
  length = "1 m"
}

source "spare" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  resistance = "20 mohm"
}

conductor "radio" {
  from   = converter.charge.out
  to     = load.radio
  size   = "12 AWG"
  length = "1 m"
}

load "radio" {
  draw     = "3 A"
  critical = "navigation"
}
