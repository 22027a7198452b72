# A hard one: the wire from the selector carries the galley only while the selector is at "all", and it
# is drawn backwards; its explicit negative is shared by the lamp. The bundle of a wire through two spaces and
# the size of another are not written.

system "teal" {
}

compartment "bow" {
}

compartment "stern" {
  engine = true
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "terminal"
  rating = "60 A"
  on     = source.house
}

switch "select" {
  label     = "Select"
  terminals = ["battery", "lamps", "galley"]
  position "off" {}
  position "lamps" {
    joins = [["battery", "lamps"]]
  }
  position "all" {
    joins = [["battery", "lamps", "galley"]]
  }
}

conductor "main" {
  from   = fuse.main.load
  to     = switch.select.battery
  size   = "2 AWG"
  length = "1 m"
}

conductor "galley_plus" { # want warning "\"galley_plus\" .* carries up to 30 A, and can carry 16\\.3 A"
  from     = load.galley.pos
  to       = switch.select.galley.pos
  polarity = "positive"
  size     = "14 AWG"
  length   = "2 m"
}

conductor "lamp_plus" { # want not-proven warning "What \"lamp_plus\" can carry is at most 20\\.4 A"
  from       = switch.select.lamps.pos
  to         = load.lamp.pos
  polarity   = "positive"
  size       = "16 AWG"
  length     = "2 m"
  insulation = "90 C"
  through    = [compartment.bow, compartment.stern]
}

conductor "lamp_minus" { # want not-proven warning "What \"lamp_minus\" can carry is not known: .size. of conductor.lamp_minus is missing; it carries up to 5 A"
  from     = load.lamp.neg
  to       = load.galley.neg
  polarity = "negative"
  length   = "1 m"
}

conductor "minus" { # want warning "\"minus\" .* carries up to 35 A, and can carry 32\\.7 A"
  from     = load.galley.neg
  to       = source.house.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "2 m"
}

load "galley" {
  kind     = "other"
  draw     = "30 A"
  behavior = "constant-current"
}

load "lamp" {
  kind     = "light"
  draw     = "5 A"
  behavior = "constant-current"
}
