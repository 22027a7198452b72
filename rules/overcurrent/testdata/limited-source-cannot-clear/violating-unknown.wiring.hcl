# An array without its current, and a charger that does not say whether it limits.

system "van" {
}

source "roof" {
  kind = "solar"
  voc  = "40 V"
}

fuse "roof" { # want not-proven warning "Whether what feeds \"roof\" can open it in a short, or else stays within what the wires carry, cannot be told"
  kind   = "cartridge"
  rating = "15 A"
}

conductor "up" {
  from   = source.roof
  to     = fuse.roof.line
  size   = "10 AWG"
  length = "1 m"
}

conductor "down" {
  from   = fuse.roof.load
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "4 m"
}

converter "tracker" {
  kind           = "mppt"
  blocks_reverse = true
  output {
    voltage     = "14.4 V"
    current_max = "10 A"
  }
}

fuse "out" { # want not-proven warning "Whether what feeds \"out\" can open it"
  kind   = "blade"
  rating = "25 A"
}

conductor "out" {
  from   = converter.tracker.out
  to     = fuse.out.line
  size   = "10 AWG"
  length = "1 m"
}

conductor "on" {
  from   = fuse.out.load
  to     = load.fan
  size   = "10 AWG"
  length = "1 m"
}

load "fan" {
  draw = "2 A"
}
