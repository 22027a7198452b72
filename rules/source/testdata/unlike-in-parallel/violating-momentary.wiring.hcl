# An emergency cross-connection that springs back is a caution.

system "t" {
  practice = ["general"]
}

source "pack" { # want caution "are joined"
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "aux" { # want caution "are joined"
  label     = "Aux"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

switch "cross" {
  label     = "Cross"
  terminals = ["pack", "aux"]
  momentary = true

  position "rest" {
  }

  position "held" {
    joins = [["pack", "aux"]]
  }
}

conductor "a" {
  from   = source.pack
  to     = switch.cross.pack
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.aux
  to     = switch.cross.aux
  size   = "8 AWG"
  length = "1 m"
}
