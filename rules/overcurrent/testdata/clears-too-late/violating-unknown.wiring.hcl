# A battery of which little is known, a run without a length, and a device without a rating.

system "van" {
  ambient = "30 C"
}

source "b" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "9 Ah"
}

fuse "guess" {
  kind   = "blade"
  rating = "20 A"
  on     = source.b
}

conductor "guess" { # want not-proven warning "A short at the far end of \"guess\" opens the device that guards it only if a guessed battery resistance is right"
  from   = fuse.guess.load
  to     = load.guess
  size   = "14 AWG"
  length = "4 m"
}

load "guess" {
  draw = "2 A"
}

fuse "length" {
  kind   = "blade"
  rating = "15 A"
  on     = source.b
}

conductor "length" { # want not-proven "Whether a short at the far end of \"length\" opens a device in time cannot be told"
  from = fuse.length.load
  to   = load.length
  size = "14 AWG"
}

load "length" {
  draw = "2 A"
}

fuse "unrated" {
  kind = "blade"
  on   = source.b
}

conductor "unrated" { # want not-proven "Whether a short at the far end of \"unrated\" opens a device in time cannot be told"
  from   = fuse.unrated.load
  to     = load.unrated
  size   = "14 AWG"
  length = "2 m"
}

load "unrated" {
  draw = "2 A"
}
