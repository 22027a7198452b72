# A switch that is too small for the current and for the volts: both are told, for another switch may
# mend one of them alone.

system "knot" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "51.2 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "terminal"
  rating = "60 A"
  on     = source.house
}

conductor "main" {
  from   = fuse.main.load
  to     = switch.main.supply
  size   = "4 AWG"
  length = "1 m"
}

switch "main" { # want warning "One contact of \"Main switch\" carries up to 30 A, and is made for 20 A" # want warning "\"Main switch\" opens up to 54.4 V, and can break 32 V"
  label          = "Main switch"
  terminals      = ["supply", "use"]
  rating         = "20 A"
  voltage_rating = "32 V dc"
  position "off" {}
  position "on" {
    joins = [["supply", "use"]]
  }
}

conductor "feed" {
  from   = switch.main.use
  to     = load.stove
  size   = "8 AWG"
  length = "1 m"
}

load "stove" {
  kind     = "heater"
  draw     = "30 A"
  behavior = "constant-current"
}
