# The other way round: what is found now is found because of the guess. Two batteries share one guess.

system "sanderling" { # want notice "at 20 C test/thin no longer speaks of \"a\" and \"b\"\\.$" notice "at half the assumed resistance test/soft no longer speaks of \"one\" and \"two\""
}

source "one" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "50 Ah"
}

source "two" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "50 Ah"
}

bus "panel" {
}

conductor "a" {
  from   = source.one
  to     = bus.panel
  size   = "14 AWG"
  length = "0.5 m"
}

conductor "b" {
  from   = source.two
  to     = bus.panel
  size   = "14 AWG"
  length = "0.5 m"
}
