# Gas is burnt where people stay, and the plan has no alarm at all.

system "siskin" {
}

compartment "galley" { # want not-proven "No alarm is written in the plan, and \"Galley\" holds gas, gasoline or a flame where people stay"
  label         = "Galley"
  gas_appliance = true
  occupied      = true
}

compartment "gas_locker" {
  fuel_vapor = true
  occupied   = false
}

source "battery" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "80 Ah"
}

conductor "lamp" {
  from   = source.battery
  to     = load.lamp
  size   = "16 AWG"
  length = "2 m"
}

load "lamp" {
  kind = "light"
  draw = "1 A"
}
