# What is not written is not proven: a rating, a battery's resistance that only a guess keeps below the rating, a battery of
# which nothing is known, a wire without a length.

system "van" {
}

source "a" {
  kind          = "battery"
  chemistry     = "agm"
  voltage       = "12 V"
  capacity      = "100 Ah"
  short_circuit = "2 kA"
}

fuse "unrated" { # want not-proven "interrupting rating of \"unrated\" is not written, and a short right behind it drives up to 2 000 A through it"
  kind   = "terminal"
  rating = "100 A"
  on     = source.a
}

conductor "a" {
  from   = fuse.unrated.load
  to     = load.a
  size   = "2 AWG"
  length = "1 m"
}

load "a" {
  draw = "10 A"
}

source "b" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "guessed" { # want not-proven "\"guessed\" can open 5 000 A; that a short right behind it drives less through it rests on a guessed resistance"
  kind         = "terminal"
  rating       = "100 A"
  interrupting = "5 kA"
  on           = source.b
}

conductor "b" {
  from   = fuse.guessed.load
  to     = load.b
  size   = "2 AWG"
  length = "1 m"
}

load "b" {
  draw = "10 A"
}

source "c" {
  kind    = "battery"
  voltage = "12 V"
}

fuse "blank" { # want not-proven "Whether \"blank\" can open a short right behind it cannot be told"
  kind         = "terminal"
  rating       = "100 A"
  interrupting = "5 kA"
  on           = source.c
}

conductor "c" {
  from   = fuse.blank.load
  to     = load.c
  size   = "2 AWG"
  length = "1 m"
}

load "c" {
  draw = "10 A"
}

source "d" {
  kind          = "battery"
  chemistry     = "agm"
  voltage       = "12 V"
  capacity      = "100 Ah"
  short_circuit = "4 kA"
}

conductor "d" {
  from = source.d
  to   = fuse.far.line
  size = "8 AWG"
}

fuse "far" { # want not-proven "Whether \"far\" can open a short right behind it cannot be told"
  kind         = "blade"
  rating       = "30 A"
  interrupting = "1 kA"
}

conductor "on" {
  from   = fuse.far.load
  to     = load.d
  size   = "8 AWG"
  length = "1 m"
}

load "d" {
  draw = "10 A"
}
