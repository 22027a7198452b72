# Dark wires do not matter to an alarm with a battery of its own, nor does its own test switch.

system "crake" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "50 Ah"
  removable = true
}

source "fixed" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "7 Ah"
}

conductor "feed" {
  from   = source.pack
  to     = load.smoke
  size   = "16 AWG"
  length = "1 m"
}

load "smoke" {
  kind        = "alarm"
  draw        = "50 mA"
  critical    = "life-safety"
  own_battery = true
}

switch "float" {
  terminals = ["a", "b"]
}

conductor "pump_in" {
  from   = source.fixed
  to     = switch.float.a
  size   = "14 AWG"
  length = "1 m"
}

conductor "pump_out" {
  from   = switch.float.b
  to     = load.pump
  size   = "14 AWG"
  length = "1 m"
}

load "pump" {
  kind        = "bilge-pump"
  draw        = "4 A"
  critical    = "life-safety"
  own_battery = false
  control     = switch.float
}
