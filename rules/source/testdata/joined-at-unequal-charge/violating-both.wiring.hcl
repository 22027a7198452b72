# Two like house batteries on a selector with a position that joins them.

system "t" {
}

source "one" { # want caution "\"One\" and \"Two\" come together with \"Select\" at both.* \"One main\" is made for 60 A"
  label        = "One"
  kind         = "battery"
  chemistry    = "agm"
  voltage      = "12 V"
  capacity     = "100 Ah"
}

source "two" { # want caution "come together"
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
  transition = "break-before-make"

  position "one" { joins = [["one", "house"]] }
  position "two" { joins = [["two", "house"]] }
  position "both" { joins = [["one", "two", "house"]] }
}
