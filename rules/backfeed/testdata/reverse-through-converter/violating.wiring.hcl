# The trailer's dc-dc converter does not block: with the tow plug apart the house battery keeps the
# plug's own contacts live, back through the converter.

system "wheatear" {
}

source "engine" {
  kind              = "alternator"
  rated             = "90 A"
  regulated_voltage = "14.2 V"
}

connector "tow" {
  label   = "Tow plug"
  tow     = true
  exposed = "free"
}

conductor "vehicle" {
  from   = source.engine
  to     = connector.tow.fixed
  size   = "8 AWG"
  length = "5 m"
}

fuse "tow" {
  kind   = "blade"
  rating = "20 A"
}

conductor "trailer" {
  from   = connector.tow.free
  to     = fuse.tow.line
  size   = "8 AWG"
  length = "4 m"
}

conductor "input" {
  from   = fuse.tow.load
  to     = converter.boost.in
  size   = "8 AWG"
  length = "0.2 m"
}

converter "boost" { # want warning "Current can run backwards through \"Booster\": .*\"House battery\" keeps its dead input live. Contacts of \"Tow plug\" are live then"
  label          = "Booster"
  kind           = "dc-dc"
  blocks_reverse = false
  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

fuse "house" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.house
}

conductor "charge" {
  from   = converter.boost.out
  to     = fuse.house.load
  size   = "8 AWG"
  length = "1 m"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}
