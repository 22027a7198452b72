system "t" {
}

source "pack" { # want not-proven notice "not fully written: short_circuit and discharge_limit.$"
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "80 Ah"
  removable = true
}

load "lamp" {
  kind = "light"
  draw = "1 A"
}

conductor "a" {
  from = source.pack
  to   = load.lamp
  size = "10 AWG"
}
