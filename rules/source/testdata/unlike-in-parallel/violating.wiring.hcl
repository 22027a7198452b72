# A parked position joins lithium and lead-acid.

system "t" {
  practice = ["general"]
}

source "pack" { # want warning "\"Pack\" \\(13.6 V rested full\\) and \"Aux\" \\(12.8 V rested full\\) are joined with \"Pick\" at both. At first contact up to 125 A run between them"
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
