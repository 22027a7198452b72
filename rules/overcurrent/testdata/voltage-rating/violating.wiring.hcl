# A 48 V pack that its charger takes to 58.4 V: a blade fuse with no figure, a 58 V one, one marked for alternating current
# only, and one that does not say which.

system "volts" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "48 V"
  cells     = 16
  capacity  = "100 Ah"
}

fuse "main" {
  kind           = "class-t"
  rating         = "100 A"
  voltage_rating = "125 V dc"
  on             = source.pack
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "2 AWG"
  length = "2 m"
}

bus "panel" {
}

branch "lamp" {
  from = bus.panel
  fuse { # want danger "taken to be rated, as blade fuses are, for 32 V and sees up to 58.4 V"
    kind   = "blade"
    rating = "5 A"
  }
  conductor {
    size   = "14 AWG"
    length = "2 m"
  }
  load "lamp" {
    draw = "1 A"
  }
}

branch "fan" {
  from = bus.panel
  fuse { # want danger "is rated for 58 V and sees up to 58.4 V"
    kind           = "terminal"
    rating         = "30 A"
    voltage_rating = "58 V dc"
  }
  conductor {
    size   = "10 AWG"
    length = "2 m"
  }
  load "fan" {
    draw = "5 A"
  }
}

branch "heater" {
  from = bus.panel
  fuse { # want danger "is rated for 250 V ac only and sits in a direct-current circuit of 58.4 V"
    kind           = "breaker"
    rating         = "20 A"
    voltage_rating = "250 V ac"
  }
  conductor {
    size   = "12 AWG"
    length = "2 m"
  }
  load "heater" {
    draw = "5 A"
  }
}

branch "pump" {
  from = bus.panel
  fuse { # want not-proven "does not say whether it is for direct or alternating current"
    kind           = "cartridge"
    rating         = "20 A"
    voltage_rating = "250 V"
  }
  conductor {
    size   = "12 AWG"
    length = "2 m"
  }
  load "pump" {
    draw = "5 A"
  }
}

branch "radio" {
  from = bus.panel
  fuse { # want not-proven "The voltage rating of .* is not written; its circuit reaches 58.4 V"
    kind   = "glass"
    rating = "5 A"
  }
  conductor {
    size   = "14 AWG"
    length = "2 m"
  }
  load "radio" {
    draw = "1 A"
  }
}

branch "socket" {
  from = bus.panel
  fuse { # want danger "is marked for 58 V and sees up to 58.4 V"
    kind           = "blade"
    rating         = "10 A"
    voltage_rating = "58 V"
  }
  conductor {
    size   = "12 AWG"
    length = "2 m"
  }
  load "socket" {
    draw = "1 A"
  }
}

converter "charger" {
  kind           = "charger"
  limits_current = true
  blocks_reverse = true
  output {
    voltage     = "58.4 V"
    current_max = "20 A"
  }
}

conductor "charge" {
  from   = converter.charger.out
  to     = bus.panel
  size   = "8 AWG"
  length = "1 m"
}
