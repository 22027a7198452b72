# Two thin wires leave a bar behind a main fuse for neither: 1.6 A and 10.6 A at a full battery ask for 2 A and 13.3 A, the
# next standard ratings are 2 A and 15 A (NFPA 70 240.6(A), below it common practice), and both guard their wires.
# mend overcurrent/oversize-device fuse.main: Put a device of 15 A right on "bar", ahead of "heater". Put a device of 2 A right on "bar", ahead of "lights".
system "dunlin" {
  title   = "Panel van"
  ambient = "30 C"
}

source "leisure" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  capacity   = "110 Ah"
  resistance = "5 mohm"
}

fuse "main" {
  kind           = "anl"
  rating         = "80 A"
  voltage_rating = "32 V dc"
  interrupting   = "6 kA"
  on             = source.leisure
}

conductor "main" {
  from       = fuse.main.load
  to         = bus.bar
  size       = "4 AWG"
  length     = "0.6 m"
  insulation = "105 C"
}

bus "bar" { rating = "150 A" }

conductor "lights" {
  from   = bus.bar
  to     = load.lights
  size   = "18 AWG"
  length = "5 m"
}

load "lights" {
  kind        = "light"
  draw        = "1.5 A"
  behavior    = "resistive"
  voltage_min = "9 V"
  voltage_max = "16 V"
}

conductor "heater" {
  from   = bus.bar
  to     = load.heater
  size   = "12 AWG"
  length = "2 m"
}

load "heater" {
  kind        = "heater"
  draw        = "10 A"
  behavior    = "resistive"
  voltage_min = "9 V"
  voltage_max = "16 V"
}
