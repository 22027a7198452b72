# Live contacts that nobody can touch, or never while they are bare.

system "near" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

# Deep enough for no finger, whatever its kind.
conductor "deep" {
  from = source.house
  to   = connector.deep.free
}

connector "deep" {
  style   = "genderless, deep"
  exposed = "none"
}

# A relay that opens with the mating.
conductor "relay" {
  from = source.house
  to   = switch.relay.a
}

switch "relay" {
  kind      = "relay"
  terminals = ["a", "b"]
  follows   = connector.mated
  position "released" {}
  position "pulled" { joins = [["a", "b"]] }
}

conductor "mated" {
  from = switch.relay.b
  to   = connector.mated.free
}

connector "mated" {
  exposed = "free"
}

# A latch that holds the plug until the switch is off.
conductor "latched" {
  from = source.house
  to   = switch.latched.a
}

switch "latched" {
  terminals = ["a", "b"]
  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

conductor "latched_out" {
  from = switch.latched.b
  to   = connector.latched.free
}

connector "latched" {
  exposed = "free"
}

interlock "latch" {
  never = [{ switch.latched = "on", connector.latched = "unmated" }]
  by    = "hardware"
}

# Current cannot come back through the charger.
conductor "feed" {
  from = connector.feed.free
  to   = converter.charge.in
}

connector "feed" {
  exposed = "free"
}

converter "charge" {
  kind           = "dc-dc"
  blocks_reverse = true
}

conductor "charge" {
  from = converter.charge.out
  to   = source.house
}

# Only the pin of the breakaway switch makes the brake contact live.
connector "tow" {
  tow      = true
  contacts = ["brakes"]
  exposed  = "free"
}

conductor "brakes" {
  from     = connector.tow.free.brakes
  to       = load.brakes.pos
  polarity = "positive"
}

conductor "brakes_back" {
  from     = connector.tow.free.neg
  to       = load.brakes.neg
  polarity = "negative"
}

load "brakes" {
  kind = "brake"
  draw = "6 A"
}

conductor "breakaway" {
  from = source.house
  to   = switch.breakaway.battery
}

switch "breakaway" {
  kind      = "breakaway"
  terminals = ["battery", "brakes"]
  position "in" {}
  position "out" { joins = [["battery", "brakes"]] }
}

conductor "breakaway_run" {
  from = switch.breakaway.brakes
  to   = load.brakes
}

# Six volts.
source "lantern" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "6 V"
  capacity  = "10 Ah"
}

conductor "lantern" {
  from = source.lantern
  to   = connector.lantern.free
}

connector "lantern" {
  exposed = "free"
}

# All of a pack lifts out with it, and its lead is deep.
source "pack" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "20 Ah"
  removable = true
}

conductor "pack" {
  part_of = source.pack
  from    = source.pack
  to      = connector.pack.free
}

connector "pack" {
  follows = source.pack
  exposed = "fixed"
}

conductor "pack_out" {
  from = connector.pack.fixed
  to   = load.pack
}

load "pack" {
  draw = "1 A"
}
