# A slide keeps the selector from both while the pack is in.

system "t" {
  practice = ["general"]
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  removable = true
}

source "aux" {
  label     = "Aux"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

switch "pick" {
  label     = "Pick"
  terminals = ["pack", "aux", "house"]
  transition = "break-before-make"

  position "pack" {
    joins = [["pack", "house"]]
  }

  position "both" {
    joins = [["pack", "aux", "house"]]
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

interlock "slide" {
  never = [{ switch.pick = "both", source.pack = "present" }]
  by    = "hardware"
}
