# A 58 V fuse on a pack whose charger stops at 56 V, and a 32 V blade on a 24 V bank.

system "near" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "48 V"
  cells     = 16
  capacity  = "100 Ah"
}

fuse "main" {
  kind           = "terminal"
  rating         = "60 A"
  voltage_rating = "58 V dc"
  on             = source.pack
}

conductor "feed" {
  from   = fuse.main.load
  to     = converter.charger.out
  size   = "6 AWG"
  length = "2 m"
}

converter "charger" {
  kind           = "charger"
  limits_current = true
  blocks_reverse = true
  output {
    voltage     = "56 V"
    current_max = "20 A"
  }
}

source "second" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "24 V"
  capacity  = "100 Ah"
}

fuse "second" {
  kind   = "blade"
  rating = "30 A"
  on     = source.second
}

conductor "second" {
  from   = fuse.second.load
  to     = load.lamp
  size   = "10 AWG"
  length = "2 m"
}

load "lamp" {
  draw = "2 A"
}
