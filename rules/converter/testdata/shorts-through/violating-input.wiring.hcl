# An inverter hangs on the output.

system "t" {
}

source "big" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "51.2 V"
  capacity  = "100 Ah"
}

converter "down" { # want warning "lies on \"inverter\": 58.4 V, and that bears 16 V"
  kind = "dc-dc"
  output {
    voltage     = "13.6 V"
    current_max = "20 A"
  }
  isolated = false
}

converter "inverter" {
  kind  = "inverter"
  rated = "500 W"
  input {
    voltage_max = "16 V"
  }
}

conductor "w1" {
  from   = source.big
  to     = converter.down.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w2" {
  from   = converter.down.out
  to     = converter.inverter.in
  size   = "2 AWG"
  length = "1 m"
}
