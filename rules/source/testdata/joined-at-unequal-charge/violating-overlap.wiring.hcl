# The same selector, made to make before it breaks: the two meet while it is thrown.

system "t" {
}

source "one" { # want caution `come together with "Select" at one>two \(overlap\)`
  label        = "One"
  kind         = "battery"
  chemistry    = "agm"
  voltage      = "12 V"
  capacity     = "100 Ah"
}

source "two" { # want caution `come together with "Select"`
  label        = "Two"
  kind         = "battery"
  chemistry    = "agm"
  voltage      = "12 V"
  capacity     = "100 Ah"
}

fuse "one" {
  label  = "One main"
  kind   = "class-t"
  rating = "60 A"
  on     = source.one
}

conductor "one" {
  from   = fuse.one.load
  to     = switch.select.one
  size   = "2 AWG"
  length = "1 m"
}

conductor "two" {
  from   = source.two
  to     = switch.select.two
  size   = "2 AWG"
  length = "1 m"
}

switch "select" {
  transition = "make-before-break"
  label      = "Select"
  terminals  = ["one", "two", "house"]
  rating     = "300 A"

  position "one" { joins = [["one", "house"]] }
  position "two" { joins = [["two", "house"]] }
}
