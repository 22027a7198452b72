# While nothing says that current cannot come back, the disconnect may not be off.
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
  to   = switch.off.start
  size = "10 AWG"
}

conductor "b" {
  from = converter.box.out
  to   = source.house
  size = "10 AWG"
}

converter "box" { # want not-proven warning "What \"Box\" does at its ports is not fully written: blocks_reverse. It holds up switching/off-but-live"
  label          = "Box"
  kind           = "dc-dc"
  isolated       = false
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

switch "off" {
  kind      = "disconnect"
  terminals = ["start", "box"]
  rating    = "100 A"
}

conductor "c" {
  from = switch.off.box
  to   = converter.box.in
  size = "10 AWG"
}
