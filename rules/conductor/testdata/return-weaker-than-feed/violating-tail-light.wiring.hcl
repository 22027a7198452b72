# The return that was a tail-light wire: a new 10 AWG plus for a converter of 25 A, and the ground of the old
# plug, 18 AWG, through which brakes and lamps come home as well. 25 + 12 + 4 A in a wire for 8.2 A at 40 C
# (18 AWG, 60 C: 10 A by Table 5, x 0.816), and a ground pin made for 30 A.

system "gull" {
}

source "start" {
  label     = "Vehicle battery"
  kind      = "battery"
  role      = "starting"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "70 Ah"
}

fuse "feed" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.start
}

conductor "feed" {
  from     = fuse.feed.load.pos
  to       = connector.tow.fixed.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "5 m"
}

conductor "ground" {
  from     = connector.tow.fixed.neg
  to       = source.start.neg
  polarity = "negative"
  size     = "8 AWG"
  length   = "5 m"
}

fuse "brakes" {
  kind   = "breaker"
  rating = "20 A"
  on     = source.start
}

conductor "brake_plus" {
  from     = fuse.brakes.load.pos
  to       = connector.tow.fixed.brakes
  polarity = "positive"
  size     = "12 AWG"
  length   = "5 m"
}

fuse "lamps" {
  kind   = "blade"
  rating = "10 A"
  on     = source.start
}

conductor "lamp_plus" {
  from     = fuse.lamps.load.pos
  to       = connector.tow.fixed.lamps
  polarity = "positive"
  size     = "14 AWG"
  length   = "5 m"
}

connector "tow" { # want danger "The return contact of \"Tow plug\" carries up to 41 A, its plus 25 A, and can carry 30 A.* brakes or road lights"
  label    = "Tow plug"
  contacts = ["brakes", "lamps"]
  rating   = "30 A"
  tow      = true
}

conductor "pigtail" { # want danger "The return \"Ground pigtail\" \\(18 AWG\\) carries up to 41 A, and can carry .* A.* brakes or road lights"
  label    = "Ground pigtail"
  from     = bus.frame
  to       = connector.tow.free.neg
  polarity = "negative"
  size     = "18 AWG"
  length   = "0.5 m"
}

bus "frame" {
  label    = "Ground stud"
  polarity = "negative"
}

conductor "boost_plus" {
  from     = connector.tow.free.pos
  to       = converter.boost.in.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "2 m"
}

conductor "boost_minus" {
  from     = converter.boost.in.neg
  to       = bus.frame
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

converter "boost" {
  kind = "dc-dc"
  input {
    current_max = "25 A"
  }
}

conductor "brake_line" {
  from     = connector.tow.free.brakes
  to       = load.brakes.pos
  polarity = "positive"
  size     = "12 AWG"
  length   = "3 m"
}

conductor "brake_minus" {
  from     = load.brakes.neg
  to       = bus.frame
  polarity = "negative"
  size     = "12 AWG"
  length   = "3 m"
}

load "brakes" {
  kind     = "brake"
  draw     = "12 A"
  behavior = "constant-current"
}

conductor "lamp_line" {
  from     = connector.tow.free.lamps
  to       = load.lamps.pos
  polarity = "positive"
  size     = "14 AWG"
  length   = "4 m"
}

conductor "lamp_minus" {
  from     = load.lamps.neg
  to       = bus.frame
  polarity = "negative"
  size     = "14 AWG"
  length   = "4 m"
}

load "lamps" {
  kind     = "light"
  draw     = "4 A"
  behavior = "constant-current"
}
