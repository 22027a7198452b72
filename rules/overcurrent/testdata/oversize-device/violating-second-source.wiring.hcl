# Drawn backwards, and found by the second battery: with the contact closed the spare pack feeds the thin run through the
# 60 A device, drawn with its load end at the battery.

system "two" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "house" {
  kind   = "anl"
  rating = "30 A"
  on     = source.house
}

conductor "run" {
  through = [compartment.cool]
  from    = bus.panel
  to      = fuse.house.load
  size    = "10 AWG"
  length  = "2 m"
}

bus "panel" {
}

conductor "cross" {
  through = [compartment.cool]
  from    = switch.cross.a
  to      = bus.panel
  size    = "4 AWG"
  length  = "20 cm"
}

switch "cross" {
  terminals = ["a", "b"]
  momentary = true
}

conductor "behind" {
  through = [compartment.cool]
  from    = fuse.spare.line
  to      = switch.cross.b
  size    = "4 AWG"
  length  = "2 m"
}

fuse "spare" { # want warning "\"spare\" \\(60 A\\) guards \"run\" \\(10 AWG\\), which allows 40 A"
  kind   = "anl"
  rating = "60 A"
}

conductor "post" {
  through = [compartment.cool]
  from    = fuse.spare.load
  to      = source.spare
  size    = "4 AWG"
  length  = "10 cm"
}

source "spare" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

compartment "cool" {
  ambient = "30 C"
}
