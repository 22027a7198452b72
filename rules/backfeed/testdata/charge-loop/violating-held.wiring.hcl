# No sun: the ring does not start by itself, but goes on once the engine has started it. An alarm hangs on the house.

system "ring" {
}

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  rated             = "90 A"
  regulated_voltage = "14.2 V"
}

source "start" {
  label     = "Starting battery"
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "engine" {
  from   = source.alternator
  to     = source.start
  size   = "10 AWG"
  length = "2 m"
}

conductor "tow" {
  from   = source.start
  to     = connector.tow.fixed
  size   = "10 AWG"
  length = "2 m"
}

connector "tow" {
  label = "Tow plug"
  tow   = true
  contacts = ["keep"]
}

conductor "charge_in" {
  from   = connector.tow.free
  to     = converter.charge.in
  size   = "10 AWG"
  length = "2 m"
}

converter "charge" { # want warning "With \"Tow plug\" mated and \"Alternator\" absent, energy goes round .*comes back, once something has started it"
  label      = "Charging converter"
  kind       = "dc-dc"
  efficiency = 0.9
  trigger    = "13.2 V"

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "charge_out" {
  from   = converter.charge.out
  to     = source.house
  size   = "10 AWG"
  length = "2 m"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  role      = "house"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "keep_in" {
  from   = source.house
  to     = converter.keep.in
  size   = "10 AWG"
  length = "2 m"
}

converter "keep" {
  label      = "Maintainer"
  kind       = "dc-dc"
  efficiency = 0.9
  trigger    = "13.2 V"

  output {
    voltage     = "13.4 V"
    current_max = "5 A"
  }
}

conductor "keep_out" {
  from   = converter.keep.out.pos
  to     = connector.tow.free.keep
  size   = "10 AWG"
  length = "2 m"
  polarity = "positive"
}

conductor "keep_neg" {
  from   = converter.keep.out.neg
  to     = source.house.neg
  size   = "10 AWG"
  length = "2 m"
  polarity = "negative"
}

conductor "keep_start" {
  from   = connector.tow.fixed.keep
  to     = source.start.pos
  size   = "10 AWG"
  length = "2 m"
  polarity = "positive"
}

load "alarm" {
  kind = "alarm"
  draw = "0.1 A"
}

conductor "alarm" {
  from   = source.house
  to     = load.alarm
  size   = "10 AWG"
  length = "2 m"
}
