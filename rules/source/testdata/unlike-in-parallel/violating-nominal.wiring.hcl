# 24 V meets 12 V through a plug: danger, and the plan draws one pole at a time.

system "t" {
  practice = ["general"]
}

source "pack" { # want danger "are joined"
  label     = "Pack"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "24 V"
  capacity  = "100 Ah"
}

source "aux" { # want danger "\"patch\" mated"
  label     = "Aux"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

connector "patch" {
  style = "grey"
}

conductor "a" {
  polarity = "positive"
  from     = source.pack.pos
  to       = connector.patch.free.pos
  size     = "6 AWG"
  length   = "2 m"
}

conductor "b" {
  polarity = "negative"
  from     = connector.patch.free.neg
  to       = source.pack.neg
  size     = "6 AWG"
  length   = "2 m"
}

conductor "c" {
  from   = source.aux
  to     = connector.patch.fixed
  size   = "6 AWG"
  length = "2 m"
}
