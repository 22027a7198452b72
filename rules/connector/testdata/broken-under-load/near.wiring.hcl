# Much current, and yet never pulled under it; or just under what counts.

system "near" {
}

source "house" {
  kind            = "battery"
  chemistry       = "agm"
  voltage         = "12 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

# Exactly 10 A.
conductor "ten" {
  from = source.house
  to   = connector.ten.fixed
}

connector "ten" {
  load_break = false
}

conductor "ten_out" {
  from = connector.ten.free
  to   = load.ten
}

load "ten" {
  draw     = "10 A"
  behavior = "constant-current"
}

# A device keeps what is not known below 10 A.
fuse "unknown" {
  kind   = "blade"
  rating = "7.5 A"
  on     = source.house
}

conductor "unknown" {
  from = fuse.unknown.load
  to   = connector.unknown.fixed
}

connector "unknown" {
  load_break = false
}

conductor "unknown_out" {
  from = connector.unknown.free
  to   = load.unknown
}

load "unknown" {
}

# Made fast.
conductor "fast" {
  from = source.house
  to   = connector.fast.fixed
}

connector "fast" {
  mated = "always"
}

conductor "fast_out" {
  from = connector.fast.free
  to   = load.fast
}

load "fast" {
  draw = "30 A"
}

# The latch lets go only with the switch off.
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
  to   = connector.latched.fixed
}

connector "latched" {
  load_break = false
}

conductor "latched_load" {
  from = connector.latched.free
  to   = load.latched
}

load "latched" {
  draw = "30 A"
}

interlock "latch" {
  never = [{ switch.latched = "on", connector.latched = "unmated" }]
  by    = "hardware"
}

# It can never be unmated.
conductor "bolted" {
  from = source.house
  to   = connector.bolted.fixed
}

connector "bolted" {
  load_break = false
}

conductor "bolted_out" {
  from = connector.bolted.free
  to   = load.bolted
}

load "bolted" {
  draw = "30 A"
}

interlock "bolt" {
  never = [{ connector.bolted = "unmated" }]
  by    = "hardware"
}

# Alternating current.
source "shore" {
  kind    = "shore"
  voltage = "230 V ac"
  rated   = "16 A"
}

conductor "cord" {
  from = source.shore
  to   = connector.mains.free
}

connector "mains" {
  load_break = false
}

conductor "mains_out" {
  from = connector.mains.fixed
  to   = load.oven
}

load "oven" {
  power = "2 kW"
}
