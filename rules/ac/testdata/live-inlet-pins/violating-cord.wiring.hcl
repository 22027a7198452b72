# The cord has pins at both ends: those that hang out of the generator's socket are live.
system "t" {
  practice = ["us-rv"]
}

source "generator" {
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  rated        = "15 A"
  neutral_bond = "bonded"
}

conductor "cord" {
  from      = source.generator
  to        = connector.inlet.free
  size      = "10 AWG"
  grounding = "10 AWG"
}

connector "inlet" { # want danger "its free side. are live from \"Generator\""
  label   = "Inlet"
  style   = "30 A inlet"
  exposed = "free"
}

conductor "lead" {
  from      = connector.inlet.fixed
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
