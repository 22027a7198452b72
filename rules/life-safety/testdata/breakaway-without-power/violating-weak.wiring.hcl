# A fixed battery is there, but too small: twice 4 Ah are needed, and its resistance eats the volts.
# Brakes drawn one by one on a thin run of their own; an automatic breaker; a fuse under the current.

system "tern" {
}

source "small" {
  label      = "Small battery"
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  capacity   = "5 Ah"
  resistance = "150 mohm"
}

fuse "feed" {
  label  = "Brake fuse"
  kind   = "blade"
  rating = "10 A"
  on     = source.small
}

conductor "feed" {
  from   = fuse.feed.load
  to     = switch.pin.a
  size   = "12 AWG"
  length = "2 m"
}

switch "pin" {
  kind      = "breakaway"
  terminals = ["a", "b"]
}

conductor "left" {
  from   = switch.pin.b
  to     = load.left
  size   = "14 AWG"
  length = "3 m"
}

conductor "right" {
  from   = switch.pin.b
  to     = load.right
  size   = "14 AWG"
  length = "3 m"
}

load "left" { # want danger "the brakes draw 16 A, and what feeds \"left\" holds 5 Ah: less than twice what fifteen minutes take .8 Ah." danger "\"left\" gets .* from a full \"Small battery\"" danger "\"Brake fuse\" .10 A. is on the way to brakes that draw 16 A: it can open"
  kind = "brake"
  draw = "8 A"
}

load "right" { # want danger "holds 5 Ah" danger "\"right\" gets" danger "it can open"
  kind = "brake"
  draw = "8 A"
}
