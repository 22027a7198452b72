# What is not written: the way back from an alternator that is drawn with its plus alone; the length of a minus whose
# plus has one; what a shared minus carries; the size of a minus; the rating of a plug whose ground is shared.

system "teal" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "alternator" {
  label = "Alternator"
  kind  = "alternator"
  rated = "60 A"
}

conductor "charge" { # want not-proven warning "\"charge\" is one wire to \"Alternator\", and no way back from \"Alternator\" is drawn"
  from     = source.alternator.pos
  to       = source.house.pos
  polarity = "positive"
  size     = "4 AWG"
  length   = "1 m"
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
  size     = "12 AWG"
  length   = "5 m"
}

conductor "pump_minus" { # want not-proven warning "Whether the way back from \"pump\" is as good as the way there is not known: .length. of conductor.pump_minus is missing"
  from     = load.pump.neg
  to       = source.house.neg
  polarity = "negative"
  size     = "12 AWG"
}

load "pump" {
  draw     = "10 A"
  behavior = "constant-current"
}

fuse "lamps" {
  kind   = "blade"
  rating = "5 A"
  on     = source.house
}

fuse "socket" {
  kind   = "blade"
  rating = "30 A"
  on     = source.house
}

conductor "lamps_plus" {
  from     = fuse.lamps.load.pos
  to       = load.lamps.pos
  polarity = "positive"
  size     = "16 AWG"
  length   = "2 m"
}

conductor "socket_plus" {
  from     = fuse.socket.load.pos
  to       = load.socket.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "2 m"
}

conductor "lamps_minus" { # want not-proven warning "What the return \"lamps_minus\" can carry is not known: .size. of conductor.lamps_minus is missing"
  from     = load.lamps.neg
  to       = connector.plug.free.neg
  polarity = "negative"
  length   = "0.2 m"
}

conductor "socket_minus" {
  from     = load.socket.neg
  to       = connector.plug.free.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "0.2 m"
}

connector "plug" { # want not-proven warning "What the return contact of \"plug\" can carry is not known: .rating. of connector.plug is missing"
}

conductor "shared" { # want not-proven warning "What comes home through the return \"shared\" \\(12 AWG\\) is not known: .draw. of load.socket is missing; it can carry 20.4 A"
  from     = connector.plug.fixed.neg
  to       = source.house.neg
  polarity = "negative"
  size     = "12 AWG"
  length   = "1 m"
}

load "lamps" {
  draw     = "3 A"
  behavior = "constant-current"
}

load "socket" {
  receptacle = true
}
