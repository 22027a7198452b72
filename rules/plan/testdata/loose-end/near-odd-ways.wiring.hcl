# Odd ways home, and ways all the same: a lamp over the upper of two blocks in series, a pump that is
# switched in its return, and a motor that a pair of contacts turns round.

system "t" {
  practice = ["general"]
}

source "lower" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "60 Ah"
}

source "upper" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "60 Ah"
}

conductor "bridge" {
  polarity = "positive"
  from     = source.lower.pos
  to       = source.upper.neg
  size     = "4 AWG"
  length   = "0.2 m"
}

fuse "top" {
  kind   = "class-t"
  rating = "10 A"
  on     = source.upper.pos
}

conductor "lamp_feed" {
  polarity = "positive"
  from     = fuse.top.load.pos
  to       = load.lamp.pos
  size     = "10 AWG"
  length   = "1 m"
}

conductor "lamp_return" {
  polarity = "negative"
  from     = load.lamp.neg
  to       = source.lower.pos
  size     = "10 AWG"
  length   = "1 m"
}

load "lamp" { draw = "1 A" }

fuse "main" {
  kind   = "class-t"
  rating = "10 A"
  on     = source.lower.pos
}

conductor "pump_feed" {
  polarity = "positive"
  from     = fuse.main.load.pos
  to       = load.pump.pos
  size     = "10 AWG"
  length   = "1 m"
}

conductor "pump_return" {
  polarity = "negative"
  from     = load.pump.neg
  to       = switch.pump.a.pos
  size     = "10 AWG"
  length   = "1 m"
}

conductor "pump_home" {
  polarity = "negative"
  from     = switch.pump.b.pos
  to       = source.lower.neg
  size     = "10 AWG"
  length   = "1 m"
}

switch "pump" {
  terminals = ["a", "b"]

  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

load "pump" { draw = "3 A" }

switch "turn" {
  terminals = ["feed", "home", "x", "y"]

  position "out" { joins = [["feed", "x"], ["home", "y"]] }
  position "off" {}
  position "in" { joins = [["feed", "y"], ["home", "x"]] }
}

conductor "turn_feed" {
  polarity = "positive"
  from     = fuse.main.load.pos
  to       = switch.turn.feed.pos
  size     = "10 AWG"
  length   = "1 m"
}

conductor "turn_home" {
  polarity = "negative"
  from     = switch.turn.home.pos
  to       = source.lower.neg
  size     = "10 AWG"
  length   = "1 m"
}

conductor "motor_x" {
  polarity = "positive"
  from     = switch.turn.x.pos
  to       = load.motor.pos
  size     = "10 AWG"
  length   = "1 m"
}

conductor "motor_y" {
  polarity = "positive"
  from     = switch.turn.y.pos
  to       = load.motor.neg
  size     = "10 AWG"
  length   = "1 m"
}

load "motor" { draw = "3 A" }
