# One disconnect before all but the alarm and what charges the other battery.

system "t" {
  practice = ["general"]
}

source "pack" { 
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
}

fuse "main" {
  kind   = "class-t"
  rating = "100 A"
  on     = source.pack
}

switch "push" {
  terminals = ["a", "b"]
  kind      = "disconnect"

  position "off" {
  }

  position "on" {
    joins = [["a", "b"]]
  }
}

conductor "a" {
  from = switch.push.b
  to   = load.lamp
}

conductor "b" {
  from = fuse.main.load
  to   = switch.push.a
}

conductor "c" {
  from = switch.push.b
  to   = load.horn
}

load "lamp" {
  label = "Lamp"
  draw  = "1 A"
}

load "horn" {
  label = "Horn"
  draw  = "1 A"
}

branch "alarm" {
  from = fuse.main.load

  fuse {
    kind   = "blade"
    rating = "3 A"
  }

  conductor {
    size = "16 AWG"
  }

  load "alarm" {
    kind = "alarm"
    draw = "0.1 A"
  }
}

conductor "d" {
  from = fuse.main.load
  to   = converter.keeper["in"]
}

converter "keeper" {
  kind    = "dc-dc"
  charges = [source.small]
}

conductor "e" {
  from = converter.keeper["out"]
  to   = source.small
}

source "small" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "20 Ah"
}

conductor "f" {
  from = source.small
  to   = load.radio
}

load "radio" {
  draw = "1 A"
}
