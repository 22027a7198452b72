# A thin tap behind a plug, and a main fuse too large for its own feed as well: two things are to be done.
# mend overcurrent/oversize-device fuse.main: Put a device of 5 A right on "plus", ahead of "plug". "plug" sits on it no more: a wire of 300 mm leads there. Fit "main" as a device of 80 A.
system "dunlin" { title = "Van" }

source "house" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  capacity   = "100 Ah"
  resistance = "8 mohm"
}

fuse "main" {
  kind           = "class-t"
  rating         = "100 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.house
}

bus "plus" { rating = "150 A" }

conductor "feed" {
  from   = fuse.main.load
  to     = bus.plus
  size   = "4 AWG"
  length = "2 m"
}

connector "plug" {
  style          = "two-pin"
  rating         = "30 A"
  voltage_rating = "48 V dc"
  exposed        = "none"
  load_break     = true
  key            = "shape"
  on             = bus.plus
}

conductor "to_lamp" {
  from   = connector.plug.free
  to     = load.lamp
  size   = "16 AWG"
  length = "3 m"
}

load "lamp" {
  kind     = "light"
  draw     = "3 A"
  behavior = "constant-current"
}

fuse "heater" {
  rating       = "30 A"
  kind         = "blade"
  interrupting = "2000 A"
  on           = bus.plus
}

conductor "to_heater" {
  from   = fuse.heater.load
  to     = load.heater
  size   = "10 AWG"
  length = "3 m"
}

load "heater" {
  kind  = "heater"
  power = "240 W"
}
