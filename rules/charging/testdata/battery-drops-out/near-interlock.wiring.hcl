# The same, but hardware keeps the sun off the controller while the battery is off.
system "teal" {}

source "roof" {
  label = "Roof"
  kind  = "solar"
  voc   = "22 V"
  isc   = "6 A"
  vmp   = "18 V"
}


converter "tracker" { 
  label = "Controller"
  kind  = "mppt"
  needs_battery = true

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

switch "disconnect" {
  label     = "Disconnect"
  kind      = "disconnect"
  terminals = ["battery", "bus"]

  position "off" {}
  position "on" { joins = [["battery", "bus"]] }
}

bus "house" {}

conductor "roof" {
  from = source.roof
  to   = converter.tracker.in
  size = "8 AWG"
}

conductor "charge" {
  from = converter.tracker.out
  to   = bus.house
  size = "8 AWG"
}

conductor "battery" {
  from = source.house
  to   = switch.disconnect.battery
  size = "8 AWG"
}

conductor "feed" {
  from = switch.disconnect.bus
  to   = bus.house
  size = "8 AWG"
}

conductor "alarm" {
  from = bus.house
  to   = load.alarm
  size = "8 AWG"
}

conductor "radio" {
  from = bus.house
  to   = load.radio
  size = "8 AWG"
}

interlock "contactor" {
  by    = "hardware"
  never = [{ source.roof = "present", switch.disconnect = "off" }]
}

load "alarm" {
  label       = "Gas alarm"
  kind        = "alarm"
  draw        = "0.1 A"
  voltage_max = "16 V"
}

load "radio" {
  kind = "electronics"
  draw = "2 A"
}

