# What a converter can push either way is not written. The maintainer's figure decides all the same: it
# gives at least that much.

system "unknown" {
}

source "start" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "70 Ah"
}

fuse "start" {
  kind   = "anl"
  rating = "40 A"
  on     = source.start
}

conductor "feed" { # want warning not-proven "Whether \"Booster\" blocks reverse current is not written: if it does not, \"Booster\" can push all that \"house\" gives out of its input into \"feed\""
  from   = fuse.start.load
  to     = converter.booster.in
  size   = "8 AWG"
  length = "5 m"
}

converter "booster" {
  label = "Booster"
  kind  = "dc-dc"
  output {
    voltage     = "14.4 V"
    current_max = "30 A"
  }
}

conductor "to_house" { # want warning not-proven "whether it can push more than \"to_house\" carries is not written"
  from   = converter.booster.out
  to     = source.house
  size   = "8 AWG"
  length = "20 cm"
}

source "house" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

converter "maintainer" {
  label = "Maintainer"
  kind  = "charger"
  output {
    voltage     = "14.4 V"
    current_max = "25 A"
  }
}

conductor "thin" { # want warning "\"Maintainer\" can push 25 A into \"thin\", which carries 8.16 A"
  from   = converter.maintainer.out
  to     = source.house
  size   = "18 AWG"
  length = "20 cm"
}

source "inlet" {
  kind    = "shore"
  voltage = "120 V ac"
  rated   = "15 A"
}

conductor "cord" {
  from       = source.inlet
  to         = converter.maintainer.in
  size       = "14 AWG"
  insulation = "90 C"
  length     = "2 m"
}

source "roof" {
  label = "Roof"
  kind  = "solar"
  voc   = "22 V"
}

conductor "roof" { # want warning not-proven "\"Roof\" comes to \"roof\" with no overcurrent device on its way"
  from   = source.roof
  to     = source.house
  size   = "14 AWG"
  length = "3 m"
}
