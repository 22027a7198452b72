# The alternator reaches the winch lead only while the boost button is held, and an array reaches it in
# the throw of a selector only. Drawn as single wires, from the far end.

system "momentary" {
}

bus "hull" {
  polarity = "chassis"
}

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  rated             = "90 A"
  regulated_voltage = "14.2 V"
}

source "house" {
  label     = "House"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "150 Ah"
}

conductor "alternator_neg" {
  from     = source.alternator.neg
  to       = bus.hull
  polarity = "negative"
  size     = "2 AWG"
  length   = "1 m"
}

conductor "house_neg" {
  from     = source.house.neg
  to       = bus.hull
  polarity = "negative"
  size     = "2 AWG"
  length   = "1 m"
}

conductor "engine_lead" {
  from     = switch.boost.engine.pos
  to       = source.alternator.pos
  polarity = "positive"
  size     = "1/0 AWG"
  length   = "2 m"
}

switch "boost" {
  terminals = ["engine", "house"]
  momentary = true
}

fuse "house" {
  kind   = "anl"
  rating = "60 A"
}

conductor "house_post" {
  from     = source.house.pos
  to       = fuse.house.load.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "30 cm"
}

conductor "winch" { # want warning "\"Alternator\" can push 112.5 A into \"winch\", which carries 65.3 A, .* faces \"House\"" warning "\"Array\" can push 75 A into \"winch\""
  from     = load.winch.pos
  to       = fuse.house.line.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "3 m"
}

conductor "boosted" {
  from     = load.winch.pos
  to       = switch.boost.house.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "1 m"
}

load "winch" {
  draw = "40 A"
}

conductor "winch_neg" {
  from     = load.winch.neg
  to       = bus.hull
  polarity = "negative"
  size     = "6 AWG"
  length   = "3 m"
}

source "array" {
  label    = "Array"
  kind     = "solar"
  voc      = "20 V"
  isc      = "10 A"
  parallel = 6
}

conductor "array_neg" {
  from     = source.array.neg
  to       = bus.hull
  polarity = "negative"
  size     = "2 AWG"
  length   = "1 m"
}

conductor "array" {
  from     = source.array.pos
  to       = switch.select.sun.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "1 m"
}

switch "select" {
  terminals  = ["sun", "common", "spare"]
  transition = "make-before-break"
  position "sun" {
    joins = [["sun", "common"]]
  }
  position "spare" {
    joins = [["common", "spare"]]
  }
}

conductor "spare" {
  from     = switch.select.spare.pos
  to       = load.winch.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "1 m"
}
