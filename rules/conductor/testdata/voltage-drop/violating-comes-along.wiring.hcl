# A hard one: a load that comes and goes with the pack that it is part of, on a wire that stays: no contact moves with it.

system "dunlin" {
  practice = ["general"]
}

source "house" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "400 Ah"
  short_circuit = "2 kA"
}

source "pack" {
  kind = "battery"
  chemistry = "lifepo4"
  voltage = "12 V"
  capacity = "50 Ah"
  short_circuit = "1 kA"
  removable = true
}

conductor "w" { # want notice `Between "house" and the bus at the end of "w" 1\.96 V is lost with everything on, 16 % of `
  from = source.house
  to = bus.m
  size = "14 AWG"
  length = "5 m"
}

bus "m" {
}

load "p" { # want notice `Between "house" and "p" 2\.14 V is lost with everything on, 18 % of nominal; the limit is `
  draw = "20 A"
  behavior = "constant-current"
  part_of = source.pack
}

load "l" { # want notice `Between "house" and "l" 1\.97 V is lost with everything on, 16 % of nominal; the limit is `
  draw = "1 A"
  behavior = "constant-current"
}

conductor "a" {
  from = bus.m
  to = load.p
  size = "10 AWG"
  length = "1 m"
}

conductor "b" {
  from = bus.m
  to = load.l
  size = "10 AWG"
  length = "1 m"
}
