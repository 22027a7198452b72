# Nobody parks on both, but the selector makes before it breaks.

system "t" {
  practice = ["general"]
}

source "pack" { # want warning "are joined with \"Pick\" at pack>aux \\(overlap\\)"
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "aux" { # want warning "are joined"
  label     = "Aux"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

switch "pick" {
  label     = "Pick"
  terminals = ["pack", "aux", "house"]
  transition = "make-before-break"

  position "pack" {
    joins = [["pack", "house"]]
  }

  position "aux" {
    joins = [["aux", "house"]]
  }
}

conductor "a" {
  from   = source.pack
  to     = switch.pick.pack
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.aux
  to     = switch.pick.aux
  size   = "8 AWG"
  length = "1 m"
}
