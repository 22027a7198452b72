# A converter for 24 V on a bank of 48 V, in the position that joins them.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "bank" {
  label     = "Bank"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "48 V"
  capacity  = "100 Ah"
}

switch "on" {
  label     = "Main"
  kind      = "disconnect"
  terminals = ["bank", "house"]
  on        = source.bank

  position "off" {}
  position "on" { joins = [["bank", "house"]] }
}

conductor "a" {
  from       = switch.on.house
  to         = converter.step.in
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
}

converter "step" { # want caution "\"Step-down\" gets up to 54.4 V, and takes 32 V"
  label = "Step-down"
  kind  = "dc-dc"
  rated = "100 W"

  input {
    voltage_min = "18 V"
    voltage_max = "32 V"
    current_max = "8 A"
  }

  output {
    voltage     = "12 V"
    current_max = "8 A"
  }
}
