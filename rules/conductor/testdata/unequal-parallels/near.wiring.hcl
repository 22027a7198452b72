# Unlike, but 30 A is no more than either bears alone. 1/0 AWG, alike within 4 %, behind 250 A. An array whose
# strong sun is less than one of its wires bears. Links between two batteries are not asked.

system "teal" {
}

source "house" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "second" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

conductor "link_a" {
  from   = source.house
  to     = source.second
  size   = "2 AWG"
  length = "0.2 m"
}

conductor "link_b" {
  from   = source.house
  to     = source.second
  size   = "2 AWG"
  length = "0.4 m"
}

fuse "galley" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.house
}

conductor "short" {
  from   = fuse.galley.load
  to     = load.galley
  size   = "10 AWG"
  length = "2 m"
}

conductor "long" {
  from   = fuse.galley.load
  to     = load.galley
  size   = "10 AWG"
  length = "3 m"
}

load "galley" {
  draw = "20 A"
}

fuse "inverter" {
  kind   = "class-t"
  rating = "250 A"
  on     = source.house
}

conductor "inverter_a" {
  from   = fuse.inverter.load
  to     = load.inverter
  size   = "1/0 AWG"
  length = "1 m"
}

conductor "inverter_b" {
  from   = fuse.inverter.load
  to     = load.inverter
  size   = "1/0 AWG"
  length = "1.04 m"
}

load "inverter" {
  draw = "200 A"
}

source "roof" {
  kind    = "solar"
  voltage = "18 V"
  voc     = "22 V"
  isc     = "8 A"
}

conductor "roof_a" {
  from   = source.roof
  to     = converter.tracker.in
  size   = "12 AWG"
  length = "2 m"
}

conductor "roof_b" {
  from   = source.roof
  to     = converter.tracker.in
  size   = "12 AWG"
  length = "3 m"
}

converter "tracker" {
  kind           = "mppt"
  blocks_reverse = true
}
