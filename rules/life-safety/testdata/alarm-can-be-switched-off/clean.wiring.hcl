# The alarm is fed ahead of the disconnect, through a device of its own.

system "wren" {
  practice = ["us-rv"]
}

compartment "cabin" {
  occupied      = true
  gas_appliance = true
}

source "battery" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "alarm" {
  kind   = "terminal"
  rating = "3 A"
  on     = source.battery
}

switch "disconnect" {
  terminals = ["battery", "house"]
  position "off" {
  }
  position "on" {
    joins = [["battery", "house"]]
  }
}

conductor "to_disconnect" {
  from   = source.battery
  to     = switch.disconnect.battery
  size   = "6 AWG"
  length = "0.5 m"
}

conductor "to_lamp" {
  from   = switch.disconnect.house
  to     = load.lamp
  size   = "16 AWG"
  length = "1 m"
}

load "lamp" {
  kind = "light"
  draw = "2 A"
}

conductor "alarm" {
  from   = fuse.alarm.load
  to     = load.gas_alarm
  size   = "16 AWG"
  length = "4 m"
}

load "gas_alarm" {
  kind        = "alarm"
  draw        = "100 mA"
  critical    = "life-safety"
  own_battery = false
  compartment = compartment.cabin
}
