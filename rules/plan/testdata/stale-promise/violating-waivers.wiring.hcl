# A waiver of a danger without an end, one without a reason, one that has run out on a danger, and one
# for a finding that is not there.

system "dunlin" {
}

source "battery" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

load "lamp" {
  kind = "light"
  draw = "1 A"
}

conductor "a" {
  from   = source.battery
  to     = load.lamp
  size   = "16 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.battery
  to     = load.lamp
  size   = "16 AWG"
  length = "1 m"
}

conductor "c" {
  from   = source.battery
  to     = load.lamp
  size   = "16 AWG"
  length = "1 m"
}

conductor "thick" {
  from   = source.battery
  to     = load.lamp
  size   = "6 AWG"
  length = "1 m"
}

waiver "endless" { # want caution "The waiver \"endless\" accepts a danger without an end date"
  rule   = "test/thin"
  at     = conductor.a
  reason = "it has always been like that"
}

waiver "mute" { # want caution "The waiver \"mute\" accepts a danger and gives no reason"
  rule   = "test/thin"
  at     = conductor.b
  reason = " "
  until  = "2027-01-01"
}

waiver "over" { # want caution "The waiver \"over\" ended on 2026-11-24"
  rule   = "test/thin"
  at     = conductor.c
  reason = "new wire is ordered"
  until  = "2026-11-24"
}

waiver "spare" { # want notice "The waiver \"spare\" accepts a finding of test/thin at conductor.thick, and there is none"
  rule   = "test/thin"
  at     = conductor.thick
  reason = "just in case"
}
