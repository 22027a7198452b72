# Three batteries that drive little: the same, less grave. One fuse of four branches too few.

system "t" {
  practice = ["general"]
}

compartment "saloon" {
  occupied = true
}

bus "bank" {
}

source "a" { # want warning "feed it"
  kind        = "battery"
  chemistry   = "agm"
  voltage     = "12 V"
  capacity    = "20 Ah"
  compartment = compartment.saloon
}

source "b" { # want warning "feed it"
  kind        = "battery"
  chemistry   = "agm"
  voltage     = "12 V"
  capacity    = "20 Ah"
  compartment = compartment.saloon
}

source "c" { # want warning "feed it"
  kind        = "battery"
  chemistry   = "agm"
  voltage     = "12 V"
  capacity    = "20 Ah"
  compartment = compartment.saloon
}

source "d" {
  kind        = "battery"
  chemistry   = "agm"
  voltage     = "12 V"
  capacity    = "20 Ah"
  compartment = compartment.saloon
}

fuse "fd" {
  kind   = "class-t"
  rating = "100 A"
  on     = source.d
}

conductor "l1" {
  from   = source.a
  to     = bus.bank
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "l2" {
  from   = source.b
  to     = bus.bank
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "l3" {
  from   = source.c
  to     = bus.bank
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "l4" {
  from   = fuse.fd.load
  to     = bus.bank
  size   = "2 AWG"
  length = "0.5 m"
}
