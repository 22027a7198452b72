# A plug with nothing on its far side and a spare bus are no loose ends; the load returns by the frame.

system "t" {
  practice = ["general"]
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "class-t"
  rating = "30 A"
  on     = source.pack
}

bus "frame" {
  polarity = "chassis"
}

bus "spare" {
}

connector "outlet" {
  style = "grey"
}

conductor "a" {
  polarity = "positive"
  from     = fuse.main.load.pos
  to       = load.lamp.pos
  size     = "10 AWG"
  length   = "2 m"
}

conductor "b" {
  polarity = "negative"
  from     = load.lamp.neg
  to       = bus.frame
  size     = "10 AWG"
  length   = "1 m"
}

conductor "c" {
  polarity = "negative"
  from     = source.pack.neg
  to       = bus.frame
  size     = "8 AWG"
  length   = "1 m"
}

conductor "d" {
  from   = fuse.main.load
  to     = connector.outlet.fixed
  size   = "8 AWG"
  length = "1 m"
}

load "lamp" {
  draw = "1 A"
}
