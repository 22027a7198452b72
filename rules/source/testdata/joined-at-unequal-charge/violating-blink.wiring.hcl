# The same selector without that position: nobody said that it breaks before it makes.

system "t" {
}

source "one" { # want not-proven "turns on `transition` of switch.select"
  label        = "One"
  kind         = "battery"
  chemistry    = "agm"
  voltage      = "12 V"
  capacity     = "100 Ah"
}

source "two" { # want not-proven "transition"
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
  label      = "Select"
  terminals  = ["one", "two", "house"]
  rating     = "300 A"

  position "one" { joins = [["one", "house"]] }
  position "two" { joins = [["two", "house"]] }
}
