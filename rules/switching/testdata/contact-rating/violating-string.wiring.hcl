# Hard ones: the array's switch is marked for alternating current, and the string stands at 80 V and more in the cold; the
# plug's ground pin carries home what two circuits draw; the windlass starts with more than its relay bears; a bus that two
# batteries feed from its two ends; ratings that are not written.

system "knot" {
  coldest = "-10 C"
}

source "roof" {
  kind            = "solar"
  voc             = "40 V"
  isc             = "9 A"
  series          = 2
  voc_coefficient = "-0.3 %/C"
}

conductor "roof" {
  from   = source.roof
  to     = switch.roof.supply
  size   = "10 AWG"
  length = "2 m"
}

switch "roof" { # want warning "\"Roof switch\" opens up to 88\\.4 V of direct current, and is rated for alternating current only"
  label          = "Roof switch"
  terminals      = ["supply", "use"]
  rating         = "20 A"
  voltage_rating = "250 V ac"
  position "off" {}
  position "on" {
    joins = [["supply", "use"]]
  }
}

conductor "tracker" {
  from   = switch.roof.use
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "2 m"
}

converter "tracker" {
  kind           = "mppt"
  isolated       = true
  blocks_reverse = true
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "charge" {
  from   = converter.tracker.out
  to     = source.house
  size   = "8 AWG"
  length = "1 m"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "terminal"
  rating = "60 A"
  on     = source.house
}

source "second" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

conductor "first" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "4 AWG"
  length = "1 m"
}

fuse "second" {
  kind   = "terminal"
  rating = "60 A"
  on     = source.second
}

conductor "second" {
  from   = fuse.second.load
  to     = bus.panel
  size   = "4 AWG"
  length = "1 m"
}

bus "panel" { # want warning "\"Panel\" carries up to 100 A, and is made for 80 A"
  label  = "Panel"
  rating = "80 A"
}

conductor "stove" {
  from   = bus.panel
  to     = load.stove
  size   = "4 AWG"
  length = "1 m"
}

load "stove" {
  kind     = "heater"
  draw     = "80 A"
  behavior = "constant-current"
}

conductor "plug_plus" {
  from     = bus.panel.pos
  to       = connector.plug.fixed.aux
  polarity = "positive"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "plug_minus" {
  from     = bus.panel.neg
  to       = connector.plug.fixed.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "plug_main" {
  from     = bus.panel.pos
  to       = connector.plug.fixed.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "1 m"
}

connector "plug" { # want warning "One contact of \"Plug\" carries up to 20 A, and is made for 15 A"
  label          = "Plug"
  contacts       = ["aux"]
  rating         = "15 A"
  voltage_rating = "32 V dc"
}

conductor "aux" {
  from     = connector.plug.free.aux
  to       = load.aux.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "aux_minus" {
  from     = load.aux.neg
  to       = connector.plug.free.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

load "aux" {
  draw     = "10 A"
  behavior = "constant-current"
}

conductor "lamps" {
  from   = connector.plug.free
  to     = load.lamps
  size   = "10 AWG"
  length = "1 m"
}

load "lamps" {
  kind     = "light"
  draw     = "10 A"
  behavior = "constant-current"
}
