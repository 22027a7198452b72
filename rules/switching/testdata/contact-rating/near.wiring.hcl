# A battery switch of 100 A bears the house, and the starter for seconds; a connector that is never taken apart
# says nothing of volts; a socket for 10 A; each of two feeds brings 40 A to a bus, and 50 A are used.

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

conductor "crank" {
  from     = source.house
  to       = switch.engine.supply
  size     = "2 AWG"
  length   = "1 m"
  cranking = true
}

switch "engine" {
  terminals      = ["supply", "use"]
  rating         = "100 A"
  voltage_rating = "48 V dc"
  position "off" {}
  position "on" {
    joins = [["supply", "use"]]
  }
}

conductor "starter" {
  from     = switch.engine.use
  to       = load.starter
  size     = "2 AWG"
  length   = "1 m"
  cranking = true
}

load "starter" {
  kind     = "motor"
  draw     = "300 A"
  behavior = "constant-current"
}

conductor "joint" {
  from   = fuse.main.load
  to     = connector.joint.fixed
  size   = "4 AWG"
  length = "1 m"
}

connector "joint" {
  rating = "60 A"
  mated  = "always"
}

conductor "feed" {
  from   = connector.joint.free
  to     = bus.panel
  size   = "4 AWG"
  length = "1 m"
}

bus "panel" {
  rating = "50 A"
}

conductor "stove" {
  from   = bus.panel
  to     = load.stove
  size   = "8 AWG"
  length = "1 m"
}

load "stove" {
  kind     = "heater"
  draw     = "40 A"
  behavior = "constant-current"
}

conductor "socket" {
  from   = bus.panel
  to     = load.socket
  size   = "8 AWG"
  length = "1 m"
}

load "socket" {
  draw       = "10 A"
  behavior   = "constant-current"
  receptacle = true
}
