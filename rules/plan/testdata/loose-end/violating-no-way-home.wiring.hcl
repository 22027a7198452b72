# Wired at both ends, and no current can run: a lamp between two positives, one between two batteries
# that share no negative, and a charger between two fuses.

system "t" {
  practice = ["general"]
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "aux" {
  label     = "Aux"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "60 Ah"
}

fuse "left" {
  kind   = "class-t"
  rating = "10 A"
  on     = source.pack
}

fuse "right" {
  kind   = "class-t"
  rating = "10 A"
  on     = source.pack
}

conductor "a" {
  polarity = "positive"
  from     = fuse.left.load.pos
  to       = load.lamp.pos
  size     = "8 AWG"
  length   = "1 m"
}

conductor "b" {
  polarity = "negative"
  from     = fuse.right.load.pos
  to       = load.lamp.neg
  size     = "8 AWG"
  length   = "1 m"
}

load "lamp" { # want not-proven warning "The return of \"lamp\" leads to no return of what feeds it"
  draw = "1 A"
}

conductor "c" {
  polarity = "positive"
  from     = fuse.left.load.pos
  to       = load.between.pos
  size     = "8 AWG"
  length   = "1 m"
}

conductor "d" {
  polarity = "negative"
  from     = source.aux.neg
  to       = load.between.neg
  size     = "8 AWG"
  length   = "1 m"
}

load "between" { # want not-proven warning "The return of \"between\" leads to no return of what feeds it"
  draw = "1 A"
}

conductor "e" {
  polarity = "positive"
  from     = fuse.left.load.pos
  to       = converter.step.in.pos
  size     = "8 AWG"
  length   = "1 m"
}

conductor "f" {
  polarity = "negative"
  from     = fuse.right.load.pos
  to       = converter.step.in.neg
  size     = "8 AWG"
  length   = "1 m"
}

converter "step" { # want not-proven warning "The return of the input of \"step\" leads to no return"
  kind     = "dc-dc"
  isolated = true
}

conductor "g" {
  from   = converter.step.out
  to     = source.aux
  size   = "8 AWG"
  length = "1 m"
}
