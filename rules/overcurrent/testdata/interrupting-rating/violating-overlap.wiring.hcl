# Each battery alone stays below 3 kA; a selector joins both on its way between two positions.

system "boat" {
  practice = "us-boat"
}

source "one" {
  kind          = "battery"
  chemistry     = "agm"
  voltage       = "12 V"
  capacity      = "100 Ah"
  short_circuit = "2.4 kA"
}

source "two" {
  kind          = "battery"
  chemistry     = "agm"
  voltage       = "12 V"
  capacity      = "100 Ah"
  short_circuit = "2.4 kA"
}

switch "select" {
  terminals  = ["one", "two", "house"]
  transition = "make-before-break"
  position "one" { joins = [["one", "house"]] }
  position "two" { joins = [["two", "house"]] }
}

conductor "one" {
  from   = source.one
  to     = switch.select.one
  size   = "4/0 AWG"
  length = "10 cm"
}

conductor "two" {
  from   = source.two
  to     = switch.select.two
  size   = "4/0 AWG"
  length = "10 cm"
}

conductor "house" {
  from   = switch.select.house
  to     = fuse.main.line
  size   = "4/0 AWG"
  length = "10 cm"
}

fuse "main" { # want danger "\"main\" can open 3 000 A, and a short right behind it drives 4 720 A through it"
  kind         = "anl"
  rating       = "200 A"
  interrupting = "3 kA"
}

conductor "on" {
  from   = fuse.main.load
  to     = load.all
  size   = "2/0 AWG"
  length = "1 m"
}

load "all" {
  draw = "60 A"
}
