# 30 A through a 20 A switch, and through a panel of 25 A; a socket used for 15 A.

system "knot" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
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

switch "main" { # want warning "One contact of \"Main switch\" carries up to 45 A, and is made for 20 A"
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
  to     = bus.panel
  size   = "4 AWG"
  length = "1 m"
}

bus "panel" { # want warning "\"Panel\" carries up to 45 A, and is made for 25 A"
  label  = "Panel"
  rating = "25 A"
}

conductor "stove" {
  from   = bus.panel
  to     = load.stove
  size   = "8 AWG"
  length = "1 m"
}

load "stove" {
  kind     = "heater"
  draw     = "30 A"
  behavior = "constant-current"
}

conductor "socket" {
  from   = bus.panel
  to     = load.socket
  size   = "8 AWG"
  length = "1 m"
}

load "socket" { # want caution "\"Socket\" is used for 15 A"
  label      = "Socket"
  draw       = "15 A"
  behavior   = "constant-current"
  receptacle = true
}
