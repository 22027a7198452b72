# No main fuse, and a feed that is too thin for one that carries the loads: 22.7 A and 14.7 A at a full battery
# ask for 37.4 / 0.8 = 46.8 A, the next standard rating is 50 A (NFPA 70 240.6(A)), and 10 AWG is the first size to
# carry it (33 CFR 183.425 Table 5).
# mend overcurrent/unprotected-run conductor.feed: Put a device of 50 A right on "house", ahead of "feed". Lay "feed" in 10 AWG.
system "dunlin" { title = "Van, 12 V side" }

source "house" {
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  resistance      = "8 mohm"
  discharge_limit = "100 A"
}

bus "plus" { rating = "150 A" }

conductor "feed" {
  from       = source.house
  to         = bus.plus
  size       = "12 AWG"
  length     = "2 m"
  insulation = "105 C"
}

fuse "heater" {
  rating       = "30 A"
  kind         = "blade"
  interrupting = "2000 A"
  on           = bus.plus
}

conductor "to_heater" {
  from       = fuse.heater.load
  to         = load.heater
  size       = "12 AWG"
  length     = "3 m"
  insulation = "105 C"
}

load "heater" {
  draw     = "20 A"
  kind     = "heater"
  behavior = "resistive"
}

fuse "lights" {
  rating       = "20 A"
  kind         = "blade"
  interrupting = "2000 A"
  on           = bus.plus
}

conductor "to_lights" {
  from       = fuse.lights.load
  to         = load.lights
  size       = "14 AWG"
  length     = "3 m"
  insulation = "105 C"
}

load "lights" {
  draw     = "13 A"
  kind     = "light"
  behavior = "resistive"
}
