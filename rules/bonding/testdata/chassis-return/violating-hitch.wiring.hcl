# A trailer without a ground pin: brakes come home through its frame, the hitch and the vehicle's body. The alarm of the
# trailer is grounded to the frame, and so is the battery: a return of a life-safety load.

system "gull" {
  practice = ["us-rv"]
}

source "start" {
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

bus "body" { # want warning "\"Brakes\", on which somebody's safety hangs, has its return through \"body\""
  polarity = "chassis"
}

conductor "strap" {
  from     = source.start.neg
  to       = bus.body
  polarity = "negative"
  size     = "4 AWG"
  length   = "0.4 m"
}

conductor "brake_plus" {
  from     = source.start.pos
  to       = connector.tow.fixed.brakes
  polarity = "positive"
  size     = "12 AWG"
  length   = "6 m"
}

connector "tow" {
  contacts = ["brakes"]
  tow      = true
}

conductor "brake_line" {
  from     = connector.tow.free.brakes
  to       = load.brakes.pos
  polarity = "positive"
  size     = "12 AWG"
  length   = "4 m"
}

conductor "brake_ground" {
  from     = load.brakes.neg
  to       = bus.frame
  polarity = "negative"
  size     = "12 AWG"
  length   = "0.3 m"
}

load "brakes" {
  label = "Brakes"
  kind  = "brake"
}

bus "frame" { # want warning "Brakes\", on which somebody's safety hangs, has its return through \"frame\""
  polarity = "chassis"
}

conductor "hitch" {
  from     = bus.frame
  to       = bus.body
  polarity = "negative"
  size     = "1/0 AWG"
  length   = "0.1 m"
}
