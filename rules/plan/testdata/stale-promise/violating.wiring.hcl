# Promises that no longer hold: an expired waiver, one that accepts nothing, one for a rule that does
# not exist, and positions whose names say other than they join.

system "curlew" {
}

source "battery" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

switch "select" { # want notice "On \"Selector\", position \"off\" joins battery and house, position \"on\" joins nothing and position \"solar\" joins battery and house, not the terminal of that name"
  label     = "Selector"
  terminals = ["battery", "house", "solar"]
  position "off" {
    joins = [["battery", "house"]]
  }
  position "on" {
  }
  position "solar" {
    joins = [["battery", "house"]]
  }
}

conductor "one" {
  from   = source.battery
  to     = switch.select.battery
  size   = "10 AWG"
  length = "1 m"
}

waiver "old" { # want notice "The waiver \"old\" ended on 2026-05-01"
  rule   = "plan/guess-decides"
  at     = source.battery
  reason = "borrowed for a season"
  until  = "2026-05-01"
}

waiver "slip" { # want notice "names the rule \"plan/guess-decide\", which does not exist"
  rule   = "plan/guess-decide"
  at     = source.battery
  reason = "a slip of the pen"
  until  = "2027-05-01"
}
