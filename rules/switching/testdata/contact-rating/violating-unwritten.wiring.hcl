# What is not written is asked for, and a start counts.

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
  to     = switch.relay.supply
  size   = "4 AWG"
  length = "1 m"
}

switch "relay" { # want warning "One contact of \"Relay\" carries up to 90 A while a load starts, and is made for 40 A"
  label          = "Relay"
  kind           = "relay"
  terminals      = ["supply", "use"]
  rating         = "40 A"
  voltage_rating = "16 V dc"
  position "off" {}
  position "on" {
    joins = [["supply", "use"]]
  }
}

conductor "windlass" {
  from   = switch.relay.use
  to     = load.windlass
  size   = "4 AWG"
  length = "1 m"
}

load "windlass" {
  kind     = "motor"
  draw     = "35 A"
  behavior = "constant-current"
  surge    = "90 A"
}

conductor "plug" {
  from   = fuse.main.load
  to     = connector.plug.fixed
  size   = "10 AWG"
  length = "1 m"
}

connector "plug" { # want not-proven caution "\"plug\" carries up to 5 A, and what it is made for is not written"
}

conductor "panel" {
  from   = connector.plug.free
  to     = bus.panel
  size   = "10 AWG"
  length = "1 m"
}

bus "panel" { # want not-proven caution "\"panel\" carries up to 5 A, and what it is made for is not written"
}

branch "lamp" {
  from = bus.panel
  fuse {
    kind   = "blade"
    rating = "5 A"
  }
  conductor {
    size   = "16 AWG"
    length = "1 m"
  }
  load "lamp" { # want not-proven notice "The hand switch before \"lamp\" carries up to 5 A; a branch cannot write"
    draw     = "5 A"
    behavior = "constant-current"
    switched = true
  }
}
