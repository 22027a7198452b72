# A selector of two poles carries two positives, and one position joins both behind it.
system "t" {
  practice = ["us-rv"]
  ambient = "40 C"
}
source "A" { # want warning "\"A\" \\(13.6 V rested full\\) and \"B\" \\(12.8 V rested full\\) are joined with \"k\" at both"
  kind = "battery"
  chemistry = "lifepo4"
  voltage = "12.8 V"
  capacity = "100 Ah"
}
source "B" { # want warning "are joined with \"k\" at both"
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "100 Ah"
}
fuse "fA" {
  kind = "class-t"
  rating = "200 A"
  voltage_rating = "125 V dc"
  interrupting = "20 kA"
  on = source.A.pos
}
fuse "fB" {
  kind = "class-t"
  rating = "200 A"
  voltage_rating = "125 V dc"
  interrupting = "20 kA"
  on = source.B.pos
}
conductor "wa" {
  from = fuse.fA.load.pos
  to = switch.k.a.pos
  size = "2/0 AWG"
  length = "0.2 m"
  insulation = "105 C"
  polarity = "positive"
}
conductor "wb" {
  from = fuse.fB.load.pos
  to = switch.k.a.neg
  size = "2/0 AWG"
  length = "0.2 m"
  insulation = "105 C"
  polarity = "positive"
}
switch "k" {
  terminals = ["a", "x", "l"]
  rating = "300 A"
  voltage_rating = "48 V dc"
  poles = 2
  transition = "break-before-make"
  position "off" {
  }
  position "both" {
    joins = [["a", "x"]]
  }
  position "lamp" {
    joins = [["a", "l"]]
  }
}
conductor "xa" {
  from = switch.k.x.pos
  to = bus.xp
  size = "2/0 AWG"
  length = "0.2 m"
  insulation = "105 C"
  polarity = "positive"
}
conductor "xb" {
  from = switch.k.x.neg
  to = bus.xp
  size = "2/0 AWG"
  length = "0.2 m"
  insulation = "105 C"
  polarity = "positive"
}
bus "xp" {
  polarity = "positive"
  rating = "300 A"
}
conductor "xw" {
  from = bus.xp
  to = load.winch.pos
  size = "2/0 AWG"
  length = "0.2 m"
  insulation = "105 C"
  polarity = "positive"
}
conductor "xn" {
  from = load.winch.neg
  to = bus.n
  size = "2/0 AWG"
  length = "0.2 m"
  insulation = "105 C"
  polarity = "negative"
}
bus "n" {
  polarity = "negative"
  rating = "300 A"
}
conductor "na" {
  from = source.A.neg
  to = bus.n
  size = "2/0 AWG"
  length = "0.2 m"
  insulation = "105 C"
  polarity = "negative"
}
conductor "nb" {
  from = source.B.neg
  to = bus.n
  size = "2/0 AWG"
  length = "0.2 m"
  insulation = "105 C"
  polarity = "negative"
}
conductor "hp" {
  from = fuse.fA.load.pos
  to = load.house.pos
  size = "2/0 AWG"
  length = "0.2 m"
  insulation = "105 C"
  polarity = "positive"
}
conductor "hn" {
  from = load.house.neg
  to = bus.n
  size = "2/0 AWG"
  length = "0.2 m"
  insulation = "105 C"
  polarity = "negative"
}
conductor "ll" {
  from = switch.k.l.pos
  to = load.lamp.pos
  size = "2/0 AWG"
  length = "0.2 m"
  insulation = "105 C"
  polarity = "positive"
}
conductor "ln" {
  from = load.lamp.neg
  to = bus.n
  size = "2/0 AWG"
  length = "0.2 m"
  insulation = "105 C"
  polarity = "negative"
}
load "winch" {
  draw = "60 A"
  behavior = "constant-current"
  kind = "electronics"
  voltage_min = "5 V"
  voltage_max = "20 V"
}
load "house" {
  draw = "80 A"
  behavior = "constant-current"
  kind = "electronics"
  voltage_min = "5 V"
  voltage_max = "20 V"
}
load "lamp" {
  draw = "2 A"
  behavior = "constant-current"
  kind = "electronics"
  voltage_min = "5 V"
  voltage_max = "20 V"
}
