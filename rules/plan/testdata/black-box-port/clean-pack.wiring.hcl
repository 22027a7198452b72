system "t" {
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "80 Ah"
  removable = true

  short_circuit   = "2 kA"
  discharge_limit = "50 A"
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
