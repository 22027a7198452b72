# Right at the limits: 35 A on 16 AWG 105 C in a boat (37.5 A), a short thin tap to its own device off a big bus, and a
# charger of 8 A behind a 60 A device on a wire that carries 10 A.

system "near" {
  practice = "us-boat"
}

source "pack" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "anl"
  rating = "60 A"
  on     = source.pack
}

conductor "feed" {
  through    = [compartment.cool]
  from       = fuse.main.load
  to         = bus.panel
  size       = "6 AWG"
  insulation = "105 C"
  length     = "2 m"
}

bus "panel" {
}

conductor "tap" {
  through    = [compartment.cool]
  from       = bus.panel
  to         = fuse.thin.line
  size       = "16 AWG"
  insulation = "105 C"
  length     = "15 cm"
}

fuse "thin" {
  kind   = "blade"
  rating = "35 A"
}

conductor "thin" {
  through    = [compartment.cool]
  from       = fuse.thin.load
  to         = load.horn
  size       = "16 AWG"
  insulation = "105 C"
  length     = "1 m"
}

load "horn" {
  draw = "5 A"
}

converter "trickle" {
  kind           = "charger"
  limits_current = true
  blocks_reverse = true
  output {
    voltage     = "14.4 V"
    current_max = "8 A"
  }
}

source "shore" {
  kind          = "shore"
  voltage       = "120 V ac"
  rated         = "15 A"
  short_circuit = "800 A"
}

conductor "cord" {
  through    = [compartment.cool]
  from       = source.shore
  to         = converter.trickle.in
  size       = "12 AWG"
  insulation = "90 C"
  length     = "3 m"
}

conductor "trickle" {
  through = [compartment.cool]
  from    = converter.trickle.out
  to      = fuse.limited.line
  size    = "18 AWG"
  length  = "1 m"
}

fuse "limited" {
  kind   = "anl"
  rating = "60 A"
}

conductor "onward" {
  through = [compartment.cool]
  from    = fuse.limited.load
  to      = load.lamp
  size    = "18 AWG"
  length  = "1 m"
}

load "lamp" {
  draw = "1 A"
}

compartment "cool" {
  ambient = "30 C"
}
