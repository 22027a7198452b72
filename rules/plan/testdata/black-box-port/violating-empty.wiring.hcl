system "t" {
}

source "start" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "80 Ah"
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "80 Ah"
}

conductor "a" {
  from = source.start
  to   = converter.box.in
  size = "10 AWG"
}

conductor "b" {
  from = converter.box.out
  to   = source.house
  size = "10 AWG"
}

converter "box" { # want not-proven "blocks_reverse, isolated, input voltage_max, input current_max, output current_max and limits_current"
  label          = "Box"
  kind           = "dc-dc"

  input {
  }

  output {
    voltage     = "14.4 V"
  }
}
