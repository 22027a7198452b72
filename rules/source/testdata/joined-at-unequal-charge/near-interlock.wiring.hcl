# The plug cannot be mated while the other pack is switched on; unlike batteries are another question.

system "t" {
}

source "a" {
  label        = "A"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "50 A"
}

source "b" {
  label        = "B"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "50 A"
}

bus "house" {
}

conductor "a1" {
  from   = source.a
  to     = switch.a.one
  size   = "2 AWG"
  length = "1 m"
}

switch "a" {
  terminals = ["one", "two"]
  rating    = "100 A"

  position "off" {}
  position "on" { joins = [["one", "two"]] }
}

conductor "a2" {
  from   = switch.a.two
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}

connector "plug" {
  label  = "Plug"
  rating = "100 A"
}

conductor "b1" {
  from   = source.b
  to     = connector.plug.free
  size   = "2 AWG"
  length = "1 m"
}

conductor "b2" {
  from   = connector.plug.fixed
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}

interlock "flap" {
  never = [{ switch.a = "on", connector.plug = "mated" }]
  by    = "hardware"
}

source "lead" {
  label        = "Lead"
  kind         = "battery"
  chemistry    = "agm"
  voltage      = "12 V"
  capacity     = "100 Ah"
}

connector "other" {
  label  = "Other"
  rating = "100 A"
}

conductor "c1" {
  from   = source.lead
  to     = connector.other.free
  size   = "2 AWG"
  length = "1 m"
}

conductor "c2" {
  from   = connector.other.fixed
  to     = bus.far
  size   = "2 AWG"
  length = "1 m"
}

source "far" {
  label        = "Far"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "50 A"
}

bus "far" {
}

conductor "c3" {
  from   = source.far
  to     = bus.far
  size   = "2 AWG"
  length = "1 m"
}
