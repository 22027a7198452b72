# A jumper in the panel, beside the pedestal's bond.
system "t" {
  practice = ["us-rv"]
}

source "shore" { # want warning "joined in 2 places, with \"Post\" present: at \"Post\" and \"Jumper\""
  label        = "Post"
  kind         = "shore"
  voltage      = "120 V ac"
  neutral_bond = "bonded"
}

conductor "s" {
  from      = source.shore
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

bus "panel" {
  label = "AC panel"
}

conductor "outlet" {
  from      = bus.panel
  to        = load.outlet
  size      = "14 AWG"
  grounding = "14 AWG"
}

load "outlet" {
  label      = "Outlet"
  kind       = "other"
  draw       = "10 A"
  receptacle = true
}

conductor "jumper" {
  label    = "Jumper"
  from     = bus.panel.neutral
  to       = bus.panel.ground
  polarity = "negative"
  size     = "10 AWG"
}
