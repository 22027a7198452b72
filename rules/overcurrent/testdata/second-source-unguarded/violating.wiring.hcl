# The wire with two doors: a device at the battery, none at the load center, whose converter can give
# more than the wire carries. The thick lead at the battery carries it all the same.

system "doors" {
  practice = ["us-rv"]
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

fuse "battery" {
  kind   = "anl"
  rating = "30 A"
}

conductor "post" {
  from   = source.house
  to     = fuse.battery.line
  size   = "4 AWG"
  length = "20 cm"
}

conductor "run" { # want warning "^\"Load center\" can push 60 A into \"Long run\", which carries 32.7 A, with no overcurrent device between them; a device that faces \"House battery\" does not stop it\\.$"
  label  = "Long run"
  from   = fuse.battery.load
  to     = bus.panel
  size   = "10 AWG"
  length = "8 m"
}

bus "panel" {
}

conductor "in_the_box" { # want warning "\"Load center\" can push 60 A into \"in_the_box\""
  from   = bus.panel
  to     = converter.center.out
  size   = "10 AWG"
  length = "30 cm"
}

converter "center" {
  label          = "Load center"
  kind           = "load-center"
  limits_current = true
  output {
    voltage     = "13.6 V"
    current_max = "60 A"
  }
  charges = [source.house]
}

source "shore" {
  kind          = "shore"
  voltage       = "120 V ac"
  rated         = "30 A"
  short_circuit = "1000 A"
}

fuse "shore" {
  kind   = "breaker"
  rating = "15 A"
  on     = source.shore
}

conductor "shore" {
  from       = fuse.shore.load
  to         = converter.center.in
  size       = "14 AWG"
  insulation = "90 C"
  length     = "2 m"
}
