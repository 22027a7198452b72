system "t" {
  practice = ["us-rv"]
}

source "generator" { # want not-proven warning "neutral_bond of source.generator is not written. It may be from 0 to 1 places"
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
}

conductor "g" {
  from      = source.generator
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
