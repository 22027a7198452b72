# The wire with two doors, both shut: a device at the load center too, and between bus and tow plug a
# charger that lets nothing back out to the pins.
system "two_doors_mended" {
  title    = "A trailer battery, a load center and a tow plug on one wire"
  practice = ["us-rv"]
  ambient  = "30 C"
}

source "house" {
  label     = "Trailer battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "battery" {
  label  = "At the battery, 40 A"
  kind   = "terminal"
  rating = "40 A"
  on     = source.house
}

conductor "run" {
  label  = "Long run"
  from   = fuse.battery.load
  to     = fuse.center.load
  size   = "10 AWG"
  length = "8 m"
}

bus "center" {
  label = "Load center, DC half"
}

fuse "center" {
  label  = "At the load center, 40 A"
  kind   = "terminal"
  rating = "40 A"
  on     = bus.center
}

conductor "in_the_box" {
  from       = converter.center.out
  to         = bus.center
  size       = "6 AWG"
  length     = "20 cm"
  insulation = "105 C"
}

converter "center" {
  label          = "Load center"
  kind           = "load-center"
  limits_current = true
  charges        = [source.house]

  output {
    voltage     = "14.4 V"
    current_max = "60 A"
  }
}

source "shore" {
  kind          = "shore"
  voltage       = "120 V ac"
  rated         = "30 A"
  short_circuit = "2 kA"
}

conductor "cord" {
  from       = source.shore
  to         = converter.center.in
  size       = "10 AWG"
  length     = "6 m"
  insulation = "90 C"
}

conductor "road_out" {
  from       = converter.road.out
  to         = fuse.road.load
  size       = "10 AWG"
  length     = "20 cm"
  insulation = "105 C"
}

fuse "road" {
  label  = "At the bus, 25 A"
  kind   = "blade"
  rating = "25 A"
  on     = bus.center
}

converter "road" {
  label          = "Road charger"
  kind           = "dc-dc"
  blocks_reverse = true
  limits_current = true
  efficiency     = 0.9
  charges        = [source.house]

  input {
    voltage_min = "11 V"
    voltage_max = "16 V"
    current_max = "22 A"
  }

  output {
    voltage     = "14.4 V"
    current_max = "16 A"
  }
}

conductor "hitch" {
  label      = "To the hitch"
  from       = converter.road.in
  to         = connector.tow.free
  size       = "10 AWG"
  length     = "4 m"
  insulation = "105 C"
}

connector "tow" {
  label   = "Tow plug"
  style   = "seven-way"
  key     = "slot"
  tow     = true
  exposed = "free"
}

conductor "vehicle" {
  from       = connector.tow.fixed
  to         = fuse.vehicle.load
  size       = "10 AWG"
  length     = "5 m"
  insulation = "105 C"
}

fuse "vehicle" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.start
}

source "start" {
  label     = "Vehicle battery"
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "70 Ah"
}
