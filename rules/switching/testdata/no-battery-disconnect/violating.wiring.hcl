# The house hangs on the pack: what switch there is springs back, follows the engine or breaks the negative.

system "t" {
  practice = ["general"]
}

source "pack" { # want caution "No switch that somebody aboard can throw takes \"Pack\" off \"Lamp\" and \"Horn\""
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
  momentary = true

  position "off" {
  }

  position "on" {
    joins = [["a", "b"]]
  }
}

conductor "a" {
  from = fuse.main.load
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
