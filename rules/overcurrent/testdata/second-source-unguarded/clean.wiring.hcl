# Each end that can feed has its own device, or gives less than the wire carries.

system "clean" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

fuse "house" {
  kind   = "anl"
  rating = "40 A"
  on     = source.house
}

conductor "run" {
  from   = fuse.house.load
  to     = fuse.charger.load
  size   = "8 AWG"
  length = "6 m"
}

fuse "charger" {
  kind   = "blade"
  rating = "40 A"
}

conductor "stub" {
  from       = converter.charger.out
  to         = fuse.charger.line
  size       = "4 AWG"
  length     = "15 cm"
}

converter "charger" {
  kind           = "charger"
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "60 A"
  }
}

source "shore" {
  kind          = "shore"
  voltage       = "120 V ac"
  rated         = "15 A"
  short_circuit = "800 A"
}

conductor "cord" {
  from       = source.shore
  to         = converter.charger.in
  size       = "12 AWG"
  insulation = "90 C"
  length     = "3 m"
}
