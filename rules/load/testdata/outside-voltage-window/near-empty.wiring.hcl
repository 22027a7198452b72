# The battery is empty and everything runs: the inverter cuts out, and no wire is to blame.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "a" {
  from       = source.house
  to         = converter.inverter.in
  size       = "2/0 AWG"
  length     = "0.5 m"
  insulation = "105 C"
}

converter "inverter" {
  label      = "Inverter"
  kind       = "inverter"
  rated      = "1000 W"
  efficiency = 0.9

  input {
    voltage_min = "10.5 V"
    voltage_max = "16 V"
  }

  output {
    voltage = "120 V ac"
  }
}
