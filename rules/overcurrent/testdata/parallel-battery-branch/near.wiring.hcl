# Two equal lead-acid batteries with 4/0 links; two of three fused; an interlock keeps two packs apart; two in series.

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
  chemistry   = "flooded"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

source "b" {
  kind        = "battery"
  chemistry   = "flooded"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

conductor "l1" {
  from   = source.a
  to     = source.b
  size   = "4/0 AWG"
  length = "0.5 m"
}

source "c" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

source "d" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

switch "tie" {
  terminals  = ["bank", "third"]
  transition = "break-before-make"

  position "off" {
  }

  position "on" {
    joins = [["bank", "third"]]
  }
}

conductor "l2" {
  from   = source.c
  to     = switch.tie.bank
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "l3" {
  from   = switch.tie.third
  to     = source.d
  size   = "2 AWG"
  length = "0.5 m"
}

interlock "apart" {
  by    = "hardware"
  never = [{ switch.tie = "on" }]
}

source "e" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

fuse "fe" {
  kind   = "class-t"
  rating = "100 A"
  on     = source.e
}

source "g" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

fuse "fg" {
  kind   = "class-t"
  rating = "100 A"
  on     = source.g
}

source "h" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

conductor "l4" {
  from   = fuse.fe.load
  to     = bus.bank
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "l5" {
  from   = fuse.fg.load
  to     = bus.bank
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "l6" {
  from   = source.h
  to     = bus.bank
  size   = "2 AWG"
  length = "0.5 m"
}

source "up" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

source "down" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

conductor "l7" {
  from   = source.down.pos
  to     = source.up.neg
  polarity = "positive"
  size   = "2 AWG"
  length = "0.5 m"
}
