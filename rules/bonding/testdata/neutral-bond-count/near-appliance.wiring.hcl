# A kettle straight on the floating pack: double insulated, no panel.
system "t" {
  practice = ["us-rv"]
}

source "battery" {
  label     = "Battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
}

conductor "dc" {
  from = source.battery
  to   = converter.inverter.in
  size = "2/0 AWG"
}

converter "inverter" {
  label        = "Inverter"
  kind         = "inverter"
  neutral_bond = "floating"

  output {
    voltage = "120 V ac"
  }
}

conductor "k" {
  from      = converter.inverter.out
  to        = load.kettle
  size      = "10 AWG"
  grounding = "10 AWG"
}

load "kettle" {
  kind  = "heater"
  power = "600 W"
}
