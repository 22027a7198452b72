# A hard one: one terminal feeds two loads at once, and is made for one of them.

system "dunlin" {}
source "b" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "100 Ah"
}

fuse "q" {
  rating = "100 A"
  on = source.b
}

conductor "w0" {
  from = fuse.q.load
  to = switch.k.f
  size = "2 AWG"
  length = "1 m"
}

switch "k" { # want warning `One contact of "k" carries up to 67\.8 A, and is made for 35 A\.`
  terminals = ["f","x","y"]
  rating = "35 A"
  position "off" {}
  position "on" {
    joins = [["f","x","y"]]
  }
}

load "x" {
  draw = "30 A"
}

load "y" {
  draw = "30 A"
}

conductor "wx" {
  from = switch.k.x
  to = load.x
  size = "2 AWG"
  length = "1 m"
}

conductor "wy" {
  from = switch.k.y
  to = load.y
  size = "2 AWG"
  length = "1 m"
}
