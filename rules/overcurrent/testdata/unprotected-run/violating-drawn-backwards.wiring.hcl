# The same hazards drawn as people do draw them: conductors from their load end, a device with line and
# load swapped, single wires with returns of their own, and a device in the negative, which guards no
# positive.

system "backwards" {
}

source "house" {
  label     = "House"
  kind      = "battery"
  chemistry = "gel"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

bus "ground" {
  polarity = "chassis"
}

conductor "house_neg" {
  from     = source.house.neg
  to       = bus.ground
  polarity = "negative"
  size     = "4 AWG"
  length   = "1 m"
}

fuse "main" {
  label  = "Main"
  kind   = "anl"
  rating = "60 A"
}

conductor "panel_feed" { # want danger "\"panel_feed\" \\(6 AWG, 1.5 m\\) meets source \"House\" with no overcurrent device in the first 457.2 mm; the first one on the way is \"Main\", 1.5 m off"
  from     = fuse.main.load.pos
  to       = source.house.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "1.5 m"
}

conductor "lamp_feed" {
  from     = load.lamp.pos
  to       = fuse.main.line.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "1 m"
}

load "lamp" {
  draw = "10 A"
}

conductor "lamp_return" {
  from     = load.lamp.neg
  to       = bus.ground
  polarity = "negative"
  size     = "6 AWG"
  length   = "1 m"
}

conductor "pump_feed" { # want danger "\"pump_feed\" .* in the first 457.2 mm, and there is none on the way"
  from     = source.house.pos
  to       = load.pump.pos
  polarity = "positive"
  size     = "14 AWG"
  length   = "3 m"
}

load "pump" {
  draw = "6 A"
}

fuse "in_the_negative" {
  kind   = "blade"
  rating = "10 A"
}

conductor "pump_return" {
  from     = load.pump.neg
  to       = fuse.in_the_negative.line.pos
  polarity = "negative"
  size     = "14 AWG"
  length   = "3 m"
}

conductor "pump_home" {
  from     = fuse.in_the_negative.load.pos
  to       = bus.ground
  polarity = "negative"
  size     = "14 AWG"
  length   = "20 cm"
}
