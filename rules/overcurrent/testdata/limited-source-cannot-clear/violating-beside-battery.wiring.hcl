# The battery behind its own device feeds the bus too, and names nothing here: only the controller feeds its device.

system "boat" {
  ambient = "30 C"
}

source "sun" {
  kind = "solar"
  isc  = "6 A"
  voc  = "22 V"
}

conductor "sun" {
  from   = source.sun
  to     = converter.controller.in
  size   = "10 AWG"
  length = "3 m"
}

converter "controller" {
  label          = "Controller"
  kind           = "mppt"
  blocks_reverse = true
  limits_current = true

  output {
    voltage     = "14.2 V"
    current_max = "30 A"
  }
}

fuse "controller" { # want warning "A short behind \"controller\" .40 A. passes no more than 30 A from \"Controller\", which never opens it, and \"thin\" carries [0-9.]+ A"
  kind   = "terminal"
  rating = "40 A"
}

conductor "out" {
  from   = converter.controller.out
  to     = fuse.controller.line
  size   = "8 AWG"
  length = "1 m"
}

conductor "in" {
  from   = fuse.controller.load
  to     = bus.panel
  size   = "8 AWG"
  length = "1 m"
}

bus "panel" {
}

conductor "thin" {
  from   = bus.panel
  to     = load.lamp
  size   = "16 AWG"
  length = "2 m"
}

load "lamp" {
  draw = "3 A"
}

fuse "battery" {
  kind   = "terminal"
  rating = "60 A"
  on     = source.b
}

conductor "battery" {
  from   = fuse.battery.load
  to     = bus.panel
  size   = "6 AWG"
  length = "1 m"
}

source "b" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  resistance = "4 mohm"
}
