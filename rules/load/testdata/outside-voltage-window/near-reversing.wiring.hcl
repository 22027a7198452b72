# A winch that a switch of two poles turns both ways gets as much backwards.

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

load "winch" {
  label = "Winch"
  kind  = "motor"
  draw  = "20 A"
  voltage_min = "9 V"
  voltage_max = "16 V"
}

fuse "main" {
  label  = "Main"
  kind   = "anl"
  rating = "30 A"
}

switch "reverse" {
  label     = "Reversing switch"
  terminals = ["plus", "minus", "one", "two"]

  position "out" {
    joins = [["plus", "one"], ["minus", "two"]]
  }

  position "off" {}

  position "in" {
    joins = [["plus", "two"], ["minus", "one"]]
  }
}

conductor "p1" {
  from     = source.pack.pos
  to       = fuse.main.line.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "p2" {
  from     = fuse.main.load.pos
  to       = switch.reverse.plus.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "n1" {
  from     = source.pack.neg
  to       = switch.reverse.minus.pos
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "m1" {
  from     = switch.reverse.one.pos
  to       = load.winch.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "m2" {
  from     = switch.reverse.two.pos
  to       = load.winch.neg
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
  from     = switch.reverse.minus.pos
  to       = bus.body
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}
