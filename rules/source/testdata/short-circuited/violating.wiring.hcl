# Behind the disconnect a wire leads to the wrong pole.

system "t" {
  practice = ["general"]
}

source "pack" { # want danger "The two poles of \"Pack\" are joined with no load between them"
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

switch "main" {
  label     = "Main"
  terminals = ["battery", "back"]
  kind      = "disconnect"

  position "off" {
  }

  position "on" {
    joins = [["battery", "back"]]
  }
}

conductor "a" {
  from   = fuse.main.load
  to     = switch.main.battery
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = fuse.main.load
  to     = load.lamp
  size   = "8 AWG"
  length = "1 m"
}

load "lamp" {
  draw = "1 A"
}

conductor "back" {
  polarity = "positive"
  from     = switch.main.back.pos
  to       = source.pack.neg
  size     = "10 AWG"
  length   = "1 m"
}
