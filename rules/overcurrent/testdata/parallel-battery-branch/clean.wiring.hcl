# A fuse at every battery; one alone.

system "t" {
  practice = ["general"]
}

compartment "saloon" {
  occupied = true
}

bus "bank" {
}

source "a" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

fuse "fa" {
  kind   = "class-t"
  rating = "100 A"
  on     = source.a
}

conductor "la" {
  from   = fuse.fa.load
  to     = bus.bank
  size   = "2 AWG"
  length = "0.5 m"
}

source "b" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

fuse "fb" {
  kind   = "class-t"
  rating = "100 A"
  on     = source.b
}

conductor "lb" {
  from   = fuse.fb.load
  to     = bus.bank
  size   = "2 AWG"
  length = "0.5 m"
}

source "c" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

fuse "fc" {
  kind   = "class-t"
  rating = "100 A"
  on     = source.c
}

conductor "lc" {
  from   = fuse.fc.load
  to     = bus.bank
  size   = "2 AWG"
  length = "0.5 m"
}

source "alone" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}
