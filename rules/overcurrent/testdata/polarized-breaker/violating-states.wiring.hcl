# Never both at once: the selector brings the pack to one side or the other battery to the other.

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

source "spare" {
  label     = "Spare"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

switch "one" {
  terminals  = ["pack", "spare", "left", "right"]
  transition = "break-before-make"

  position "pack" {
    joins = [["pack", "left"]]
  }

  position "spare" {
    joins = [["spare", "right"]]
  }
}

fuse "tie" { # want warning "\"Pack\" can push current through it from its line side and \"Spare\" from its load side"
  label     = "Tie"
  kind      = "breaker"
  polarized = true
  rating    = "30 A"
}

conductor "a" {
  from   = source.pack
  to     = switch.one.pack
  size   = "10 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.spare
  to     = switch.one.spare
  size   = "10 AWG"
  length = "1 m"
}

conductor "d" {
  from   = switch.one.left
  to     = fuse.tie.line
  size   = "10 AWG"
  length = "1 m"
}

conductor "e" {
  from   = switch.one.right
  to     = fuse.tie.load
  size   = "10 AWG"
  length = "1 m"
}

conductor "f" {
  from   = switch.one.right
  to     = load.lamp
  size   = "10 AWG"
  length = "1 m"
}

load "lamp" {
  draw = "5 A"
}
