# Only one position of the selector, and only while the pack is in.

system "t" {
  practice = ["general"]
}

source "pack" { # want danger "joined with no load between them, with \"Pack\" present and \"Pick\" at wrong"
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  removable = true
}

fuse "main" {
  kind   = "class-t"
  rating = "30 A"
  on     = source.pack
}

switch "pick" {
  label     = "Pick"
  terminals = ["feed", "lamp", "frame"]

  position "lamp" {
    joins = [["feed", "lamp"]]
  }

  position "off" {
  }

  position "wrong" {
    joins = [["feed", "frame"]]
  }
}

conductor "a" {
  from   = fuse.main.load
  to     = switch.pick.feed
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = switch.pick.lamp
  to     = load.lamp
  size   = "8 AWG"
  length = "1 m"
}

load "lamp" {
  draw = "1 A"
}

conductor "back" {
  polarity = "positive"
  from     = switch.pick.frame.pos
  to       = source.pack.neg
  size     = "10 AWG"
  length   = "1 m"
}
