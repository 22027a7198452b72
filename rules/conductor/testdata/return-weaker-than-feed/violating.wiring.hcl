# The return is long enough to lose what the feed does not: 6 AWG there, 14 AWG back. The starter's strap does not say
# cranking. A wire with a plus alone, and nothing drawn back.

system "teal" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "pump" {
  kind   = "blade"
  rating = "15 A"
  on     = source.house
}

conductor "pump_plus" {
  from     = fuse.pump.load.pos
  to       = load.pump.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "5 m"
}

conductor "pump_minus" { # want warning "The way back from \"pump\" has 42.3 mohm, the way there 6.61 mohm; it loses up to 0.466 V, and \"pump_minus\" is the weakest part"
  from     = load.pump.neg
  to       = source.house.neg
  polarity = "negative"
  size     = "14 AWG"
  length   = "5 m"
}

load "pump" {
  draw     = "10 A"
  behavior = "constant-current"
}

conductor "crank" {
  from     = source.house.pos
  to       = load.starter.pos
  polarity = "positive"
  size     = "2/0 AWG"
  length   = "1 m"
  cranking = true
}

conductor "strap" { # want warning "The return \"strap\" \\(6 AWG\\) carries up to 150 A, and can carry 65.3 A"
  from     = load.starter.neg
  to       = source.house.neg
  polarity = "negative"
  size     = "6 AWG"
  length   = "0.5 m"
}

load "starter" {
  kind     = "motor"
  draw     = "150 A"
  behavior = "constant-current"
}

fuse "lamp" {
  kind   = "blade"
  rating = "5 A"
  on     = source.house
}

conductor "lamp_plus" { # want not-proven warning "\"lamp_plus\" is one wire to \"lamp\", and no way back from \"lamp\" is drawn"
  from     = fuse.lamp.load.pos
  to       = load.lamp.pos
  polarity = "positive"
  size     = "16 AWG"
  length   = "2 m"
}

load "lamp" {
  draw = "2 A"
}
