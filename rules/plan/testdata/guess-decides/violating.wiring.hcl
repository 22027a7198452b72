# Ambient, joints and the battery's resistance are all assumed, and each decides something.

system "knot" { # want notice "The plan leaves out the ambient temperature, and verdicts turn on it: at 50 C test/thin is violated by \"Feed\"\\.$" notice "The plan leaves out the resistance of joints and contacts, and verdicts turn on it: at four times the assumed resistance test/long is violated by \"Feed\"\\.$"
}

source "battery" { # want notice "The plan leaves out the batteries' resistance, and verdicts turn on it: at twice the assumed resistance test/soft is violated by \"battery\"\\.$"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "feed" {
  label  = "Feed"
  from   = source.battery
  to     = load.lamp
  size   = "12 AWG"
  length = "5 m"
}

load "lamp" {
  kind = "light"
  draw = "5 A"
}
