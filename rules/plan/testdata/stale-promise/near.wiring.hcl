# The waiver holds on its last day, today; a closed valve and an open hatch are names like any other.

system "curlew" {
}

source "battery" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

switch "valve" {
  terminals = ["battery", "coil"]
  position "valve closed" {
  }
  position "hatch open" {
    joins = [["battery", "coil"]]
  }
}

conductor "one" {
  from   = source.battery
  to     = switch.valve.battery
  size   = "16 AWG"
  length = "1 m"
}

waiver "today" {
  rule   = "plan/guess-decides"
  at     = source.battery
  reason = "until the new one is here"
  until  = "2026-11-25"
}
