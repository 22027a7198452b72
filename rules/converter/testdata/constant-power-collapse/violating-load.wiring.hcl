# A transmitter of constant power at the end of a long lead; the lamp on its own lead draws less as its volts fall.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "start" {
  label     = "Starting battery"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

fuse "run" {
  label  = "Run fuse"
  kind   = "blade"
  rating = "30 A"
  on     = source.start
}

conductor "run" {
  from       = fuse.run.load
  to         = load.radio
  size       = "16 AWG"
  length     = "10 m"
  insulation = "105 C"
}

load "radio" { # want "\"Transmitter\" asks for 150 W"
  label         = "Transmitter"
  kind          = "electronics"
  power         = "150 W"
  rated_voltage = "12 V"
}

fuse "lamp" {
  label  = "Lamp fuse"
  kind   = "blade"
  rating = "30 A"
  on     = source.start
}

conductor "lamp" {
  from       = fuse.lamp.load
  to         = load.lamp
  size       = "16 AWG"
  length     = "10 m"
  insulation = "105 C"
}

load "lamp" {
  label         = "Flood lamp"
  kind          = "light"
  behavior      = "resistive"
  power         = "150 W"
  rated_voltage = "12 V"
}

conductor "clock" {
  from   = load.radio
  to     = load.clock
  size   = "16 AWG"
  length = "0.3 m"
}

load "clock" { # want "\"Clock\" hangs on the wire on which there is no current at which \"Transmitter\" runs"
  label         = "Clock"
  kind          = "electronics"
  draw          = "100 mA"
  rated_voltage = "12 V"
}
