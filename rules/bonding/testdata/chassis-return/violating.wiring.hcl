# A van: the charge converter has its return in the body, 30 A. Straps of the engine are its own.

system "wren" {
  practice = ["vehicle"]
}

bus "body" { # want caution "\"charge\" has its return through \"Body\", up to 30 A; one rusted joint of 50 mohm makes 45 W of it"
  label    = "Body"
  polarity = "chassis"
}

source "alternator" {
  kind  = "alternator"
  rated = "120 A"
}

source "start" {
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

conductor "charge" {
  from     = source.alternator.pos
  to       = source.start.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "1 m"
}

conductor "engine_strap" {
  from     = source.alternator.neg
  to       = bus.body
  polarity = "negative"
  size     = "2 AWG"
  length   = "0.4 m"
}

conductor "battery_strap" {
  from     = source.start.neg
  to       = bus.body
  polarity = "negative"
  size     = "2 AWG"
  length   = "0.4 m"
}

fuse "converter" {
  kind   = "terminal"
  rating = "40 A"
  on     = source.start.pos
}

conductor "converter_plus" {
  from     = fuse.converter.load.pos
  to       = converter.charge.in.pos
  polarity = "positive"
  size     = "8 AWG"
  length   = "4 m"
}

conductor "converter_ground" {
  from     = converter.charge.in.neg
  to       = bus.body
  polarity = "negative"
  size     = "8 AWG"
  length   = "0.5 m"
}

converter "charge" {
  kind           = "dc-dc"
  isolated       = true
  blocks_reverse = true
  input {
    current_max = "30 A"
  }
  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "converter_out" {
  from   = converter.charge.out
  to     = source.house
  size   = "10 AWG"
  length = "1 m"
}

source "house" {
  kind         = "battery"
  role         = "house"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "50 A"
}
