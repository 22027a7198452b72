# 100 Ah is not more than 100 Ah; a selector without an off takes the bigger pack off by standing at the
# other, in the one position that the interlock leaves; a plug made to be pulled; the vehicle's own battery.

system "t" {
  practice = ["vehicle"]
}

source "small" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

conductor "a" {
  from = source.small
  to   = load.one
}

load "one" {
  draw = "1 A"
}

source "start" {
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "120 Ah"
}

conductor "b" {
  from = source.start
  to   = load.two
}

load "two" {
  draw = "1 A"
}

source "big" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
}

switch "select" {
  terminals = ["big", "spare", "house"]

  position "big" {
    joins = [["big", "house"]]
  }

  position "both" {
    joins = [["big", "spare", "house"]]
  }

  position "spare" {
    joins = [["spare", "house"]]
  }
}

interlock "not_both" {
  by    = "hardware"
  never = [{ switch.select = "both" }]
}

conductor "c" {
  from = source.big
  to   = switch.select.big
}

conductor "d" {
  from = switch.select.house
  to   = load.three
}

load "three" {
  draw = "1 A"
}

source "lifted" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
  removable = true
}

connector "plug" {
  on         = source.lifted
  load_break = true
}

conductor "e" {
  from = connector.plug.free
  to   = load.four
}

load "four" {
  draw = "1 A"
}
