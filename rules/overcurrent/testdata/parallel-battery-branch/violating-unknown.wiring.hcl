# A bank written as one; a link without a size.

system "t" {
  practice = ["general"]
}

compartment "saloon" {
  occupied = true
}

bus "bank" {
}

source "bank" { # want not-proven "is 4 batteries in parallel written as one"
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
  parallel    = 4
}

source "a" { # want not-proven "`size` of conductor.l1 is missing"
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

source "b" { # want not-proven "`size` of conductor.l1"
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

conductor "l1" {
  from   = source.a
  to     = source.b
  length = "0.5 m"
}
