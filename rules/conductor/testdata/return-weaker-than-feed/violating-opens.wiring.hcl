# Two ways home. As long as both are whole the 6 AWG takes four fifths of 40 A; once it opens, the 12 AWG has all of
# it. The heater is a pair, whose minus then carries what its plus does not.

system "teal" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "winch" {
  kind   = "terminal"
  rating = "50 A"
  on     = source.house
}

conductor "winch_plus" {
  from     = fuse.winch.load.pos
  to       = load.winch.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "3 m"
}

conductor "winch_minus" {
  label    = "Winch minus"
  from     = load.winch.neg
  to       = source.house.neg
  polarity = "negative"
  size     = "6 AWG"
  length   = "3 m"
}

conductor "bond" { # want warning "Once the return \"Winch minus\" \\(6 AWG\\) is open, the return \"bond\" \\(12 AWG\\) carries up to 40 A, and can carry 20.4 A"
  from     = load.winch.neg
  to       = load.heater.neg
  polarity = "negative"
  size     = "12 AWG"
  length   = "1 m"
}

load "winch" {
  draw     = "40 A"
  behavior = "constant-current"
}

fuse "heater" {
  kind   = "blade"
  rating = "15 A"
  on     = source.house
}

conductor "heater" { # want warning "Once the return \"Winch minus\" \\(6 AWG\\) is open, the return wire of \"heater\" \\(12 AWG\\) carries up to 50 A, and can carry 20.4 A"
  from   = fuse.heater.load
  to     = load.heater
  size   = "12 AWG"
  length = "2 m"
}

load "heater" {
  draw     = "10 A"
  behavior = "constant-current"
}
