# The engine is off and its battery empty: a converter that 13.3 V starts does not run, and asks for nothing.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "start" {
  label     = "Starting battery"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  rated             = "90 A"
  regulated_voltage = "14.2 V"
}

conductor "lead" {
  from       = source.alternator
  to         = source.start
  size       = "4 AWG"
  length     = "1 m"
  insulation = "105 C"
}

conductor "a" {
  from       = source.start
  to         = converter.charge.in
  size       = "8 AWG"
  length     = "2 m"
  insulation = "105 C"
}

converter "charge" {
  label   = "Charge converter"
  kind    = "dc-dc"
  rated   = "250 W"
  trigger = "13.3 V"

  input {
    voltage_min = "11.9 V"
    voltage_max = "16 V"
    current_max = "25 A"
  }

  output {
    voltage     = "14.4 V"
    current_max = "17 A"
  }
}
