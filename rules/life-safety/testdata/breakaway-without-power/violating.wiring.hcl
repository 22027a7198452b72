# The lift-out pack feeds the house and the breakaway switch; the tow plug brings charge. On the road
# with the pack at home everything works from the truck, until the plug parts with the trailer.

system "gull" {
  practice = ["vehicle"]
}

source "pack" {
  label     = "Lift-out pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  removable = true
}

source "truck" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "70 Ah"
}

connector "tow" {
  label = "Tow plug"
  tow   = true
}

conductor "truck" {
  from   = source.truck
  to     = connector.tow.fixed
  size   = "8 AWG"
  length = "5 m"
}

conductor "tow" {
  from   = connector.tow.free
  to     = bus.house
  size   = "8 AWG"
  length = "3 m"
}

switch "house_select" {
  label     = "House select"
  terminals = ["pack", "house"]
  position "off" {
  }
  position "pack" {
    joins = [["pack", "house"]]
  }
}

conductor "pack" {
  from   = source.pack
  to     = switch.house_select.pack
  size   = "6 AWG"
  length = "1 m"
}

conductor "house" {
  from   = switch.house_select.house
  to     = bus.house
  size   = "6 AWG"
  length = "1 m"
}

bus "house" {
}

conductor "pin_feed" {
  from   = bus.house
  to     = switch.pin.battery
  size   = "10 AWG"
  length = "2 m"
}

switch "pin" {
  label     = "Breakaway pin"
  kind      = "breakaway"
  terminals = ["battery", "brakes"]
  position "in" {
  }
  position "pulled" {
    joins = [["battery", "brakes"]]
  }
}

conductor "brakes" {
  from   = switch.pin.brakes
  to     = load.brakes
  size   = "10 AWG"
  length = "3 m"
}

load "brakes" { # want danger "In a breakaway in mode \"towing\", no battery of the trailer feeds \"Brakes\" with"
  label     = "Brakes"
  kind      = "brake"
  draw      = "16 A"
  critical  = "life-safety"
  needed_in = [mode.towing]
}

mode "towing" {
  state = { connector.tow = "mated", switch.pin = "in" }
}
