# One grey genderless family for everything: pack lead, boost output, folding panel.

system "grey" {
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  removable = true
}

conductor "pack_lead" {
  part_of = source.pack
  from    = source.pack
  to      = connector.power.free
}

connector "power" { # want danger "^\"Power\" and \"Charge\" fit each other: the fixed half of \"Charge\", with 48 V of \"Boost\", then meets the free half of \"Power\", which is made for 12 V of \"Pack\"\\.$"
  label   = "Power"
  style   = "genderless"
  key     = "grey"
  follows = source.pack
}

conductor "house" {
  from = connector.power.fixed
  to   = load.house
}

load "house" {
  draw = "5 A"
}

source "start" {
  label     = "Vehicle battery"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "70 Ah"
}

conductor "boost_in" {
  from = source.start
  to   = converter.boost.in
}

converter "boost" {
  label          = "Boost"
  kind           = "dc-dc"
  blocks_reverse = true
  output {
    voltage     = "48 V"
    current_max = "8 A"
  }
}

conductor "boost_out" {
  from = converter.boost.out
  to   = connector.charge.fixed
}

connector "charge" { # want danger "\"Charge\" and \"Power\" fit each other: the fixed half of \"Charge\", with 48 V of \"Boost\""
  label   = "Charge"
  style   = "Genderless"
  key     = "Grey"
  follows = source.pack
}

conductor "port" {
  part_of = source.pack
  from    = connector.charge.free
  to      = converter.tracker.in
}

converter "tracker" {
  part_of        = source.pack
  kind           = "mppt"
  blocks_reverse = true
  output {
    voltage = "14.4 V"
  }
}

conductor "tracker" {
  part_of = source.pack
  from    = converter.tracker.out
  to      = source.pack
}

source "panel" {
  label = "Folding panel"
  kind  = "solar"
  voc   = "45 V"
  vmp   = "37 V"
}

conductor "panel" {
  from = source.panel
  to   = connector.panel.free
}

connector "panel" { # want warning "the fixed half of \"Charge\", with 48 V of \"Boost\", then meets the free half of \"Panel\", which is made for 37 V of \"Folding panel\""
  label = "Panel"
  style = "genderless"
  key   = "grey"
}

conductor "controller" {
  from = connector.panel.fixed
  to   = converter.controller.in
}

converter "controller" {
  kind           = "mppt"
  blocks_reverse = true
  output {
    voltage = "14.4 V"
  }
}

conductor "controller_out" {
  from = converter.controller.out
  to   = load.spare
}

load "spare" {
  draw = "1 A"
}
