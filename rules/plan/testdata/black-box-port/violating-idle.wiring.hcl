# Nothing waits on it: a notice.
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

converter "box" { # want not-proven notice "not fully written: isolated.$"
  label          = "Box"
  kind           = "dc-dc"
  blocks_reverse = true
  limits_current = true

  input {
    voltage_max = "16 V"
    current_max = "30 A"
  }

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}
