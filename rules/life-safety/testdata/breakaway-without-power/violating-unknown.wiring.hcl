# What is not written is asked for: what the brakes draw, what the battery holds, how long a battery
# of its own lasts, whether a breaker resets itself, what is behind the second pin.

system "skua" {
}

source "box" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
}

fuse "box" {
  kind   = "breaker"
  rating = "30 A"
  on     = source.box
}

conductor "feed" {
  from   = fuse.box.load
  to     = switch.pin.a
  size   = "10 AWG"
  length = "2 m"
}

switch "pin" {
  kind      = "breakaway"
  terminals = ["a", "b"]
}

conductor "brakes" {
  from   = switch.pin.b
  to     = load.brakes
  size   = "10 AWG"
  length = "3 m"
}

conductor "own" {
  from   = switch.pin.b
  to     = load.own
  size   = "10 AWG"
  length = "3 m"
}

load "brakes" { # want not-proven "power for fifteen minutes in a breakaway cannot be told" not-proven "How many volts reach \"brakes\"" not-proven caution "resets itself is not written"
  kind = "brake"
}

load "own" { # want not-proven "has a battery of its own; that it lasts for fifteen minutes is not written"
  kind        = "brake"
  draw        = "8 A"
  own_battery = true
}

switch "second" { # want not-proven "Behind the breakaway switch \"second\" no brakes are written"
  kind      = "breakaway"
  terminals = ["a", "b"]
}

load "axle" { # want not-proven "No breakaway switch is written in the plan that feeds \"axle\""
  kind = "brake"
  draw = "8 A"
}
