# The disconnect is before the lamp only; two batteries of 60 Ah on one wire make 120 Ah.

system "t" {
  practice = ["general"]
}

source "one" { # want warning "No switch .* takes \"one\" off \"Inverter\""
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "60 Ah"
}

source "two" { # want warning "takes \"two\" off \"Inverter\""
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "60 Ah"
}

bus "b" {
}

switch "main" {
  kind      = "disconnect"
  terminals = ["battery", "house"]

  position "off" {
  }

  position "on" {
    joins = [["battery", "house"]]
  }
}

conductor "a" {
  from = source.one
  to   = bus.b
}

conductor "b" {
  from = bus.b
  to   = source.two
}

conductor "c" {
  from = bus.b
  to   = switch.main.battery
}

conductor "d" {
  from = switch.main.house
  to   = load.lamp
}

conductor "e" {
  from = bus.b
  to   = converter.inverter["in"]
}

converter "inverter" {
  label = "Inverter"
  kind  = "inverter"
  rated = "1000 W"
}

load "lamp" {
  draw = "1 A"
}
