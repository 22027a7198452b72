# Everything that was assumed is written.

system "knot" {
  ambient = "35 C"
}

source "battery" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  capacity   = "100 Ah"
  resistance = "8 mohm"
}

conductor "feed" {
  from   = source.battery
  to     = load.lamp
  size   = "10 AWG"
  length = "1 m"
}

load "lamp" {
  kind = "light"
  draw = "5 A"
}
