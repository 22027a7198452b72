# A small panel straight on a full battery: the battery holds it down.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

bus "panel" {
  label = "Panel"
}

conductor "feed" {
  from       = source.house
  to         = bus.panel
  size       = "2 AWG"
  length     = "1 m"
  insulation = "105 C"
}

source "trickle" {
  label = "Trickle module"
  kind  = "solar"
  voc   = "22 V"
  isc   = "500 mA"
  vmp   = "18 V"
  imp   = "450 mA"
}

conductor "sun" {
  from       = source.trickle
  to         = bus.panel
  size       = "14 AWG"
  length     = "2 m"
  insulation = "105 C"
}

conductor "a" {
  from       = bus.panel
  to         = load.lamp
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
}

load "lamp" {
  label = "Lamp"
  kind = "light"
  draw = "1 A"
  voltage_min = "9 V"
  voltage_max = "16 V"
}
