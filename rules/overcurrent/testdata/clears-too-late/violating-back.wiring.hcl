# A converter that does not block lets a battery of unwritten capacity into the array's wires from the other end.

system "van" {
  ambient = "30 C"
}

source "sun" {
  kind = "solar"
  isc  = "6 A"
  voc  = "22 V"
}

conductor "roof" { # want not-proven "Whether a short at the far end of \"roof\" opens a device in time cannot be told"
  from   = source.sun
  to     = fuse.in.line
  size   = "10 AWG"
  length = "3 m"
}

fuse "in" {
  kind   = "blade"
  rating = "80 A"
}

conductor "tail" { # want not-proven "tail"
  from   = fuse.in.load
  to     = converter.boost.in
  size   = "10 AWG"
  length = "10 cm"
}

converter "boost" {
  kind           = "dc-dc"
  blocks_reverse = false
  limits_current = true

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

fuse "house" {
  kind   = "terminal"
  rating = "40 A"
  on     = source.house
}

conductor "house" { # want not-proven "house"
  from   = fuse.house.load
  to     = converter.boost.out
  size   = "8 AWG"
  length = "1 m"
}

source "house" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
}
