# A breakaway circuit may go without a device, so that none can take the brakes away: a caution that
# says both sides. The wire behind the switch is part of it, though the tow plug's brake contact, and
# the vehicle behind it, is joined to it too.

system "brakes" {
  practice = ["us-rv"]
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "80 Ah"
}

source "vehicle" {
  kind    = "supply"
  voltage = "13.6 V"
  rated   = "20 A"
}

connector "tow" {
  contacts = ["brakes"]
  tow      = true
}

switch "breakaway" {
  kind      = "breakaway"
  terminals = ["battery", "brakes"]
  position "rest" {
  }
  position "pulled" {
    joins = [["battery", "brakes"]]
  }
}

conductor "breakaway_feed" { # want caution "meets source \"House battery\" with no overcurrent device in the first 457.2 mm, and there is none on the way\\. A braking circuit may go without one"
  from   = source.house
  to     = switch.breakaway.battery
  size   = "12 AWG"
  length = "3 m"
}

conductor "magnets" { # want caution "A braking circuit may go without one"
  from   = switch.breakaway.brakes
  to     = load.brakes
  size   = "12 AWG"
  length = "4 m"
}

conductor "controller" { # want caution "meets source \"House battery\""
  from     = source.vehicle.pos
  to       = connector.tow.fixed.brakes
  size     = "12 AWG"
  length   = "6 m"
  polarity = "positive"
}

conductor "brake_contact" { # want caution "A braking circuit may go without one"
  from     = connector.tow.free.brakes
  to       = switch.breakaway.brakes.pos
  size     = "12 AWG"
  length   = "1 m"
  polarity = "positive"
}

load "brakes" {
  kind     = "brake"
  draw     = "12 A"
  critical = "life-safety"
}
