# The lift-out pack is the only source, and the mode says that it is aboard while towing. The switch
# between the two can be thrown only while parked. A manual breaker of 1.5 times the current may stay.

system "gull" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  removable = true
}

switch "disconnect" {
  terminals       = ["pack", "house"]
  reachable_while = [mode.parked]
}

conductor "pack" {
  from   = source.pack
  to     = switch.disconnect.pack
  size   = "8 AWG"
  length = "1 m"
}

fuse "brakes" {
  kind   = "breaker"
  reset  = "manual"
  rating = "25 A"
}

conductor "house" {
  from   = switch.disconnect.house
  to     = fuse.brakes.line
  size   = "8 AWG"
  length = "1 m"
}

conductor "feed" {
  from   = fuse.brakes.load
  to     = switch.pin.a
  size   = "8 AWG"
  length = "1 m"
}

switch "pin" {
  kind      = "breakaway"
  terminals = ["a", "b"]
}

conductor "brakes" {
  from   = switch.pin.b
  to     = load.brakes
  size   = "8 AWG"
  length = "2 m"
}

connector "tow" {
  tow = true
}

load "brakes" {
  kind      = "brake"
  power     = "192 W"
  needed_in = [mode.towing]
}

conductor "winch" {
  from   = switch.pin.b
  to     = load.third
  size   = "10 AWG"
  length = "2 m"
}

load "third" {
  kind        = "brake"
  draw        = "0.5 A"
  own_battery = true
  hold_up     = "20 min"
}

mode "parked" {
  state = { connector.tow = "unmated" }
}

mode "towing" {
  state = { switch.disconnect = "closed", source.pack = "present", connector.tow = "mated" }
}
