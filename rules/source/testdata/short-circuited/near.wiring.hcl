# The same selector, its bad position ruled out by hardware; two batteries in series are no short.

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

source "upper" {
  label     = "Upper"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

conductor "link" {
  polarity = "positive"
  from     = source.pack.pos
  to       = source.upper.neg
  size     = "4 AWG"
  length   = "0.3 m"
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

interlock "stop" {
  never = [{ switch.pick = "wrong" }]
  by    = "hardware"
}
