# A hard one: the second way is in two pieces, through a plug, drawn backwards, and one wire alone with its pole;
# only together are they as long as they are. The device is drawn the wrong way round.

system "teal" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "terminal"
  rating = "80 A"
}

conductor "lead" {
  from   = source.house
  to     = fuse.main.load
  size   = "2 AWG"
  length = "0.1 m"
}

conductor "direct" { # want warning "\"direct\" and \"outer\" with \"inner\" run in parallel and do not share alike: \"direct\" takes 67 %"
  from   = fuse.main.line
  to     = bus.panel
  size   = "8 AWG"
  length = "1 m"
}

conductor "outer" {
  from     = bus.panel.pos
  to       = connector.joint.free.pos
  polarity = "positive"
  size     = "8 AWG"
  length   = "1 m"
}

connector "joint" {
  style = "ring"
}

conductor "inner" {
  from     = connector.joint.fixed.pos
  to       = fuse.main.line.pos
  polarity = "positive"
  size     = "8 AWG"
  length   = "1 m"
}

bus "panel" {
}

fuse "lamp" {
  kind   = "blade"
  rating = "5 A"
  on     = bus.panel
}

conductor "lamp" {
  from   = fuse.lamp.load
  to     = load.lamp
  size   = "16 AWG"
  length = "2 m"
}

load "lamp" {
  draw = "2 A"
}
