# A hard one: the plus is doubled by a second wire, drawn from the load back to the device, and the return runs through
# the second pole of a switch, so that it is no return of every state. The contact carries two circuits.

system "teal" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "terminal"
  rating = "60 A"
}

conductor "lead" {
  from   = source.house
  to     = switch.main.battery
  size   = "4 AWG"
  length = "0.3 m"
}

switch "main" { # want warning "The return contact of \"main\" carries up to 34 A, its plus 28 A, and can carry 30 A"
  terminals = ["battery", "panel"]
  poles     = 2
  rating    = "30 A"
  position "off" {}
  position "on" { joins = [["battery", "panel"]] }
}

conductor "panel" {
  from     = switch.main.panel.pos
  to       = fuse.main.load.pos
  polarity = "positive"
  size     = "4 AWG"
  length   = "0.3 m"
}

conductor "first" {
  from     = fuse.main.line.pos
  to       = load.winch.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "4 m"
}

conductor "second" {
  from     = load.winch.pos
  to       = fuse.main.line.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "4 m"
}

conductor "back" { # want warning "The way back from \"winch\" has .*\"back\" is the weakest part"
  from     = load.winch.neg
  to       = switch.main.panel.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "4 m"
}

load "winch" {
  draw     = "28 A"
  behavior = "constant-current"
}

fuse "lamp" {
  kind   = "blade"
  rating = "10 A"
  on     = source.house.pos
}

conductor "lamp_plus" {
  from     = fuse.lamp.load.pos
  to       = load.lamp.pos
  polarity = "positive"
  size     = "14 AWG"
  length   = "2 m"
}

conductor "lamp_minus" {
  from     = load.lamp.neg
  to       = switch.main.panel.neg
  polarity = "negative"
  size     = "14 AWG"
  length   = "1 m"
}

load "lamp" {
  draw     = "6 A"
  behavior = "constant-current"
}
