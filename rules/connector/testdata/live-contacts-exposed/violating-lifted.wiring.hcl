# A pack carries its own half of each plug away with it: the power lead, and a charge port that its
# tracker feeds backwards. A wire that stays behind at its post hangs loose on the second battery.

system "lifted" {
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  removable = true
}

fuse "pack" {
  part_of = source.pack
  kind    = "terminal"
  rating  = "60 A"
  on      = source.pack
}

conductor "pack_lead" {
  part_of = source.pack
  from    = fuse.pack.load
  to      = connector.dock.free
}

connector "dock" { # want warning "^Apart from its place, \"Pack\" has the free side of \"Dock\" with it, live: \"Pack\" puts 13.6 V on contacts that can be touched\\.$"
  label   = "Dock"
  follows = source.pack
  exposed = "free"
}

conductor "dock" {
  from = connector.dock.fixed
  to   = bus.panel
}

bus "panel" {
}

converter "tracker" {
  part_of        = source.pack
  label          = "Tracker"
  kind           = "mppt"
  blocks_reverse = false
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "tracker" {
  part_of = source.pack
  from    = converter.tracker.out
  to      = source.pack
}

conductor "port" {
  part_of = source.pack
  from    = connector.port.free
  to      = converter.tracker.in
}

connector "port" { # want warning "\"Pack\" has the free side of \"Charge port\" with it, live: \"Pack\" puts 13.6 V"
  label   = "Charge port"
  follows = source.pack
  style   = "genderless, grey"
}

conductor "port_lead" {
  from = connector.port.fixed
  to   = load.spare
}

load "spare" {
}

source "second" {
  label     = "Second battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "50 Ah"
}

conductor "second" {
  from = source.second
  to   = bus.panel
}

conductor "old_lead" { # want warning "^With \"Pack\" lifted out, the end of \"old_lead\" that served it is bare and live: \"Second battery\" puts 13.6 V\\. If it lifts out too, `part_of` says so\\.$"
  from = bus.panel
  to   = source.pack
}
