# A step-down of 40 A is all that feeds a bar, and no device stands behind it: bell wire glows on at 40 A. What is thick
# enough for all that it gives needs none.

system "alone" {
  ambient = "30 C"
}

source "bank" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "24 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "class-t"
  rating = "40 A"
  on     = source.bank
}

conductor "in" {
  from   = fuse.main.load
  to     = converter.step.in
  size   = "8 AWG"
  length = "1 m"
}

converter "step" {
  kind           = "dc-dc"
  isolated       = true
  blocks_reverse = true
  limits_current = true

  output {
    voltage     = "13.2 V"
    current_max = "40 A"
  }
}

conductor "out" {
  from   = converter.step.out
  to     = bus.bar
  size   = "8 AWG"
  length = "0.3 m"
}

bus "bar" {}

conductor "bell" { # want warning "\"step\" can push 40 A into \"bell\", which carries 10 A, with no overcurrent device between them\\.$"
  from   = bus.bar
  to     = load.lamp
  size   = "18 AWG"
  length = "4 m"
}

load "lamp" { draw = "1 A" }
