# One position joins two like batteries by stout links; the other joins a third by a thin one.

system "t" {
  practice = ["general"]
}

source "a" { # want warning "\"c\" drives up to"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "b" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "c" { # want warning "\"a\" drives up to"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

switch "tie" {
  terminals  = ["a", "b", "c"]
  transition = "break-before-make"

  position "b" {
    joins = [["a", "b"]]
  }

  position "off" {}

  position "c" {
    joins = [["a", "c"]]
  }
}

conductor "la" {
  from   = source.a
  to     = switch.tie.a
  size   = "4/0 AWG"
  length = "0.5 m"
}

conductor "lb" {
  from   = source.b
  to     = switch.tie.b
  size   = "4/0 AWG"
  length = "0.5 m"
}

conductor "lc" {
  from   = switch.tie.c
  to     = source.c
  size   = "10 AWG"
  length = "0.5 m"
}
