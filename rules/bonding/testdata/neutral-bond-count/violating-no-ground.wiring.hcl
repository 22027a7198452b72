# Whether the cable has a ground to the bond in the panel is not written.
system "t" {
  practice = ["us-rv"]
}

source "generator" { # want not-proven warning "grounding of conductor.g is not written"
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  neutral_bond = "floating"
}

conductor "g" {
  from      = source.generator
  to        = bus.panel
  size      = "10 AWG"
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
  from     = bus.panel.neutral
  to       = bus.panel.ground
  polarity = "negative"
  size     = "10 AWG"
}
