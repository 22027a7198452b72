# Two packs whose link carries less than either drives.

system "t" {
  practice = ["general"]
}

compartment "saloon" {
  occupied = true
}

bus "bank" {
}

source "a" { # want warning "\"b\" drives up to .* through a link that carries"
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

source "b" { # want warning "\"a\" drives up to"
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

conductor "l1" {
  from   = source.b
  to     = source.a
  size   = "2 AWG"
  length = "0.5 m"
}
