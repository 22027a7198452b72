# Four plugs whose touchable half is the live one: a battery, an inverter, a boost and a small array.

system "bare" {
  coldest = "0 C"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "anl"
  rating = "100 A"
  on     = source.house
}

conductor "main" {
  from = fuse.main.load
  to   = bus.panel
}

bus "panel" {
}

conductor "tow" {
  from = bus.panel
  to   = connector.tow.free
}

connector "tow" { # want warning "^Unplugged, \"Tow plug\" stays live on its free side: \"House battery\" puts 12.8 V on contacts that can be touched\\.$"
  label   = "Tow plug"
  tow     = true
  exposed = "free"
}

conductor "inverter_in" {
  from = bus.panel
  to   = converter.inverter.in
}

converter "inverter" {
  label = "Inverter"
  kind  = "inverter"
  output {
    voltage = "120 V ac"
  }
}

conductor "inverter_out" {
  from = converter.inverter.out
  to   = connector.inlet.fixed
}

connector "inlet" { # want danger "\"Shore inlet\" stays live on its fixed side: \"Inverter\" puts 120 V of alternating current on contacts"
  label   = "Shore inlet"
  exposed = "fixed"
}

conductor "cord" {
  from = source.shore
  to   = connector.inlet.free
}

source "shore" {
  kind    = "shore"
  voltage = "120 V ac"
}

conductor "boost_in" {
  from = bus.panel
  to   = converter.boost.in
}

converter "boost" {
  label          = "Boost"
  kind           = "dc-dc"
  blocks_reverse = true
  limits_current = true
  output {
    voltage     = "48 V"
    current_max = "8 A"
  }
}

conductor "boost_out" {
  from = converter.boost.out
  to   = connector.boost.fixed
}

connector "boost" { # want warning "\"Charge lead\" stays live on its fixed side: \"Boost\" puts 48 V, up to 8 A, on contacts"
  label   = "Charge lead"
  exposed = "fixed"
}

source "panel" {
  label = "Folding panel"
  kind  = "solar"
  voc   = "22 V"
  vmp   = "18 V"
  isc   = "3 A"
}

conductor "panel" {
  from = source.panel
  to   = connector.panel.free
}

connector "panel" { # want notice "\"panel\" stays live on its free side: \"Folding panel\" puts 24.2 V, up to 3.75 A, on contacts"
  exposed = "free"
}
