# An array behind a device that it cannot open, on a wire too thin for what the sun gives; one whose wires are thick enough; a charger
# that alone feeds a panel while its battery is away, through a device bigger than the wire.

system "van" {
  ambient = "30 C"
}

source "roof" {
  kind     = "solar"
  voc      = "40 V"
  isc      = "10 A"
  parallel = 2
}

fuse "roof" { # want warning "A short behind \"roof\" \\(30 A\\) passes no more than 25 A from \"roof\", which never opens it, and \"down\" carries 20 A"
  kind   = "cartridge"
  rating = "30 A"
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
  size   = "14 AWG"
  length = "4 m"
}

converter "tracker" {
  kind           = "mppt"
  blocks_reverse = true
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

source "side" {
  kind = "solar"
  voc  = "40 V"
  isc  = "8 A"
}

fuse "side" { # want caution "Nothing that feeds \"side\" \\(15 A\\) can open it: \"side\" drives no more than 10 A into a short"
  kind   = "cartridge"
  rating = "15 A"
}

conductor "side_up" {
  from   = source.side
  to     = fuse.side.line
  size   = "10 AWG"
  length = "1 m"
}

conductor "side_down" {
  from   = fuse.side.load
  to     = converter.second.in
  size   = "10 AWG"
  length = "4 m"
}

converter "second" {
  kind           = "mppt"
  blocks_reverse = true
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

# The charger feeds the panel while the pack is away.

source "pack" {
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "12.8 V"
  capacity      = "100 Ah"
  short_circuit = "2 kA"
  removable     = true
}

conductor "pack" {
  from   = source.pack
  to     = bus.panel
  size   = "4 AWG"
  length = "1 m"
}

conductor "charge" {
  from   = converter.charger.out
  to     = bus.panel
  size   = "6 AWG"
  length = "1 m"
}

converter "charger" {
  kind           = "charger"
  blocks_reverse = true
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "30 A"
  }
}

bus "panel" {
}

fuse "water" { # want warning "A short behind \"water\" \\(25 A\\) passes no more than 30 A from \"charger\", which never opens it, and \"water\" carries 20 A"
  kind   = "blade"
  rating = "25 A"
  on     = bus.panel
}

conductor "water" {
  from   = fuse.water.load
  to     = load.water
  size   = "14 AWG"
  length = "2 m"
}

load "water" {
  draw = "5 A"
}
