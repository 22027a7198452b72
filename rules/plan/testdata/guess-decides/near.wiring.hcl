# The same guesses on wire and battery with room to spare: they decide nothing that counts.

system "knot" {
}

source "battery" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
}

conductor "feed" {
  from   = source.battery
  to     = load.lamp
  size   = "6 AWG"
  length = "1 m"
}

load "lamp" {
  kind = "light"
  draw = "5 A"
}
