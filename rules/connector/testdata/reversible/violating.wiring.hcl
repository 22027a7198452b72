# A plug that goes both ways, one that does not say, and a pack whose lugs lift off its posts.

system "both_ways" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "plug" {
  from = source.house
  to   = connector.plug.fixed
}

connector "plug" { # want warning "^\"Radio plug\" can be turned round: the plus of one half then meets the minus of the other\\.$"
  label = "Radio plug"
  key   = "None"
}

conductor "radio" {
  from = connector.plug.free
  to   = load.radio
}

load "radio" {
  draw = "2 A"
}

conductor "unsaid" {
  from = source.house
  to   = connector.unsaid.fixed
}

connector "unsaid" { # want caution not-proven "Whether \"unsaid\" can be turned round, plus on minus, is not written"
}

source "pack" { # want caution not-proven "\"Pack\" lifts out, and \"lead\" lands on its posts"
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "50 Ah"
  removable = true
}

conductor "lead" {
  from = source.pack
  to   = load.lamp
}

load "lamp" {
  draw = "1 A"
}
