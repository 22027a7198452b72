# The disconnect stands between battery and body, and a second return goes from the lamp straight to the post.

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

conductor "p1" {
  from     = source.pack.pos
  to       = fuse.main.line.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "p2" {
  from     = fuse.main.load.pos
  to       = load.lamp.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "1 m"
}

switch "off" { # want warning "current comes home by \"n3\""
  label     = "Master"
  kind      = "disconnect"
  terminals = ["battery", "house"]

  position "off" {
  }

  position "on" {
    joins = [["battery", "house"]]
  }
}

conductor "n1" {
  from     = source.pack.neg
  to       = switch.off.battery.pos
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "n2" {
  from     = switch.off.house.pos
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

conductor "n3" {
  from     = load.lamp.neg
  to       = source.pack.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}
