# The house runs on a lift-out pack, or on the load center while shore power is there. With the pack
# at home and no shore power the alarm is dark, and the owner has said that people sleep there then.

system "plover" {
  practice = ["us-rv"]
}

source "pack" {
  label     = "Lift-out pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  removable = true
}

source "shore" {
  label   = "Shore power"
  kind    = "shore"
  voltage = "120 V ac"
  rated   = "30 A"
}

converter "center" {
  label = "Load center"
  kind  = "load-center"
  output {
    voltage     = "13.6 V"
    current_max = "45 A"
  }
}

conductor "shore_in" {
  from   = source.shore
  to     = converter.center.in
  size   = "10 AWG"
  length = "3 m"
}

conductor "charge" {
  from   = converter.center.out
  to     = bus.panel
  size   = "6 AWG"
  length = "1 m"
}

fuse "pack" {
  kind   = "terminal"
  rating = "60 A"
  on     = source.pack
}

conductor "feed" {
  from   = fuse.pack.load
  to     = bus.panel
  size   = "6 AWG"
  length = "1 m"
}

bus "panel" {
}

branch "alarm" {
  from = bus.panel
  fuse {
    kind   = "blade"
    rating = "3 A"
  }
  conductor {
    size   = "16 AWG"
    length = "3 m"
  }
  load "co" { # want danger "\"Monoxide alarm\" goes dark with \"Lift-out pack\" absent"
    label       = "Monoxide alarm"
    kind        = "alarm"
    draw        = "60 mA"
    critical    = "life-safety"
    own_battery = false
  }
}

mode "camping" {
  state    = { source.shore = "absent" }
  occupied = true
}

mode "storage" {
  state    = { source.pack = "absent", source.shore = "absent" }
  occupied = false
}
