# A start of 8 s is longer than the short-time formula speaks of; a load without a draw behind too large a
# device; wire that feeds the starter and a bow thruster besides.

system "teal" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "winch" {
  kind   = "breaker"
  rating = "40 A"
  on     = source.house
}

conductor "winch" { # want warning "\"winch\" carries 60 A for 8 s while a load starts"
  from   = fuse.winch.load
  to     = load.winch
  size   = "12 AWG"
  length = "2 m"
}

load "winch" {
  kind       = "motor"
  draw       = "10 A"
  behavior   = "constant-current"
  surge      = "60 A"
  surge_time = "8 s"
}

fuse "unknown" {
  kind   = "blade"
  rating = "30 A"
  on     = source.house
}

conductor "unknown" { # want not-proven warning "What \"unknown\" carries is not known: .draw. of load.unknown is missing; it can carry 16\\.3 A"
  from   = fuse.unknown.load
  to     = load.unknown
  size   = "14 AWG"
  length = "2 m"
}

load "unknown" {
  kind = "other"
}

conductor "crank" { # want warning "\"crank\" \\(6 AWG\\) carries up to 110 A"
  from     = source.house
  to       = load.starter
  size     = "6 AWG"
  length   = "1 m"
  cranking = true
}

load "starter" {
  kind     = "motor"
  draw     = "300 A"
  behavior = "constant-current"
}

conductor "thruster" {
  from   = load.starter
  to     = load.thruster
  size   = "2/0 AWG"
  length = "4 m"
}

load "thruster" {
  kind     = "motor"
  draw     = "110 A"
  behavior = "constant-current"
}
