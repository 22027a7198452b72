# No capacity; and a pack that lifts out by a plug of which nothing is said.

system "t" {
  practice = ["general"]
}

source "first" { # want not-proven "`capacity` of source.first is missing"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
}

conductor "a" {
  from = source.first
  to   = load.lamp
}

load "lamp" {
  draw = "1 A"
}

source "second" { # want not-proven "A plug does, and whether it may be pulled under load is not written"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
  removable = true
}

connector "plug" {
  on = source.second
}

conductor "b" {
  from = connector.plug.free
  to   = load.fan
}

load "fan" {
  draw = "1 A"
}
