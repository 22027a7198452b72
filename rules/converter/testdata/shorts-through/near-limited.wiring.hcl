# What feeds the tracker limits its current, and a battery on the output holds it down.

system "t" {
}

converter "boost" {
  kind           = "dc-dc"
  limits_current = true
  isolated       = true
  output {
    voltage     = "48 V"
    current_max = "5 A"
  }
}

source "start" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
}

converter "tracker" {
  kind     = "mppt"
  isolated = false
  output {
    voltage     = "13.6 V"
    current_max = "20 A"
  }
}

source "house" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
}

load "lamp" {
  kind        = "other"
  draw        = "5 A"
  voltage_max = "16 V"
}

conductor "w1" {
  from   = source.start
  to     = converter.boost.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w2" {
  from   = converter.boost.out
  to     = converter.tracker.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = converter.tracker.out
  to     = source.house
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = source.house
  to     = load.lamp
  size   = "2 AWG"
  length = "1 m"
}
