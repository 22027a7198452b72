# The controller sits on the battery side: the disconnect is honest.

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

switch "main" {
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
  to     = source.pack
  size   = "8 AWG"
  length = "1 m"
}
