# A fuse in each side: the one in the negative may be gone around. The switch breaks both.

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

bus "body" {
  label    = "Body"
  polarity = "chassis"
}

load "lamp" {
  label = "Lamp"
  draw  = "1 A"
}

fuse "main" {
  label  = "Main"
  kind   = "anl"
  rating = "30 A"
}

fuse "minus" {
  label  = "Minus"
  kind   = "anl"
  rating = "30 A"
}

switch "off" {
  label     = "Master"
  kind      = "disconnect"
  terminals = ["battery", "house"]
  poles     = 2

  position "off" {
  }

  position "on" {
    joins = [["battery", "house"]]
  }
}

conductor "p1" {
  from     = source.pack.pos
  to       = fuse.main.line.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "a" {
  from   = fuse.main.load
  to     = switch.off.battery
  size   = "10 AWG"
  length = "1 m"
}

conductor "b" {
  from   = switch.off.house
  to     = load.lamp
  size   = "10 AWG"
  length = "1 m"
}

conductor "n1" {
  from     = source.pack.neg
  to       = fuse.minus.line.pos
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "n2" {
  from     = fuse.minus.load.pos
  to       = fuse.main.line.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "g1" {
  from     = source.pack.neg
  to       = bus.body
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "g2" {
  from     = load.lamp.neg
  to       = bus.body
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}
