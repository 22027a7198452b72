kit "controller" {
  title = "A solar controller with its lead"
}

bus "panel" {
}

bus "battery" {
}

conductor "panel" {
  from   = bus.panel
  to     = converter.tracker.in
  size   = "8 AWG"
  length = "1 m"
}

converter "tracker" {
  label          = "Tracker"
  kind           = "mppt"
  limits_current = true
  blocks_reverse = true
  output {
    voltage     = "14.4 V"
    current_max = "40 A"
  }
}

conductor "charge" { # want warning "\"Tracker\" can push 40 A into \"charge\", which carries 32.7 A, .* faces \"pack\""
  from   = converter.tracker.out
  to     = bus.battery
  size   = "10 AWG"
  length = "2 m"
}
