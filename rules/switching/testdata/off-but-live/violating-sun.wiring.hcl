# Off is a place with the sun in it.

system "t" {
  practice = ["general"]
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

switch "main" { # want warning "With \"Main\" off, its terminal \"house\" is still live: \"Tracker\" feeds it"
  label     = "Main"
  terminals = ["battery", "house"]
  kind      = "disconnect"

  position "off" {
  }

  position "on" {
    joins = [["battery", "house"]]
  }
}

conductor "a" {
  from   = source.pack
  to     = switch.main.battery
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = switch.main.house
  to     = load.lamp
  size   = "8 AWG"
  length = "1 m"
}

load "lamp" {
  draw = "1 A"
}

source "roof" {
  label = "Roof"
  kind  = "solar"
  voc   = "24 V"
  isc   = "6 A"
}

converter "tracker" {
  label          = "Tracker"
  kind           = "mppt"
  blocks_reverse = true

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "s" {
  from   = source.roof
  to     = converter.tracker["in"]
  size   = "8 AWG"
  length = "1 m"
}

conductor "t" {
  from   = converter.tracker["out"]
  to     = load.lamp
  size   = "8 AWG"
  length = "1 m"
}
