# A wire with two doors. From the battery's fuse it runs back to the load center, whose converter can put
# more into it than it carries; from there it goes on to the tow plug's pin. Device and shroud were
# thought of for one end only.
system "two_doors_flawed" {
  title    = "A trailer battery, a load center and a tow plug on one wire"
  practice = ["us-rv"]
  ambient  = "30 C"
}

source "house" {
  label           = "Trailer battery"
  kind            = "battery"
  chemistry       = "agm"
  voltage         = "12 V"
  capacity        = "200 Ah"
  short_circuit   = "1.2 kA"
  resistance      = "10 mohm"
  charge_limit    = "60 A"
  discharge_limit = "100 A"
  role            = "house"
}

fuse "battery" {
  label          = "At the battery, 30 A"
  kind           = "terminal"
  rating         = "30 A"
  on             = source.house
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

conductor "run" {
  label  = "Long run"
  from   = fuse.battery.load
  to     = bus.center
  size   = "10 AWG"
  length = "8 m"
}

bus "center" {
  label  = "Load center, DC half"
  rating = "100 A"
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
  isolated       = true
  blocks_reverse = true

  output {
    voltage     = "14.4 V"
    current_max = "60 A"
  }

  input {
    voltage_min = "100 V ac"
    voltage_max = "135 V ac"
    current_max = "8 A"
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

conductor "hitch" {
  label      = "To the hitch"
  from       = bus.center
  to         = connector.tow.free
  size       = "10 AWG"
  length     = "4 m"
  insulation = "105 C"
}

connector "tow" {
  label              = "Tow plug"
  style              = "seven-way"
  key                = "slot"
  tow                = true
  exposed            = "free"
  rating             = "30 A"
  voltage_rating     = "16 V dc"
  load_break         = true
  contact_resistance = "3 mohm"
}

conductor "vehicle" {
  from       = connector.tow.fixed
  to         = fuse.vehicle.load
  size       = "10 AWG"
  length     = "9 m"
  insulation = "105 C"
}

fuse "vehicle" {
  kind           = "terminal"
  rating         = "30 A"
  on             = source.start
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

source "start" {
  label         = "Vehicle battery"
  kind          = "battery"
  role          = "starting"
  chemistry     = "flooded"
  voltage       = "12 V"
  capacity      = "70 Ah"
  short_circuit = "1.5 kA"
  resistance    = "8 mohm"
  charge_limit  = "24 A"
}
