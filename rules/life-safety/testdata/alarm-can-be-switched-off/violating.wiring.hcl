# The gas alarm sits behind the battery disconnect: with it off, nothing else feeds the alarm.

system "wren" {
  practice = ["us-rv"]
}

compartment "cabin" {
  occupied       = true
  gas_appliance  = true
}

source "battery" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "terminal"
  rating = "60 A"
  on     = source.battery
}

switch "disconnect" {
  label     = "Battery disconnect"
  terminals = ["battery", "house"]
  position "off" {
  }
  position "on" {
    joins = [["battery", "house"]]
  }
}

conductor "to_disconnect" {
  from   = fuse.main.load
  to     = switch.disconnect.battery
  size   = "6 AWG"
  length = "0.5 m"
}

conductor "to_panel" {
  from   = switch.disconnect.house
  to     = bus.panel
  size   = "6 AWG"
  length = "1 m"
}

bus "panel" {
}

fuse "alarm" {
  kind   = "blade"
  rating = "3 A"
  on     = bus.panel
}

conductor "alarm" {
  from   = fuse.alarm.load
  to     = load.gas_alarm
  size   = "16 AWG"
  length = "4 m"
}

load "gas_alarm" { # want danger "\"Gas alarm\" goes dark with \"Battery disconnect\" at off, and it has no battery"
  label       = "Gas alarm"
  kind        = "alarm"
  draw        = "100 mA"
  critical    = "life-safety"
  own_battery = false
  compartment = compartment.cabin
}
