# Two generators that their makers let run together.
system "t" {
  practice = ["us-rv"]
}

source "generator" {
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  rated        = "15 A"
  neutral_bond = "bonded"

  parallel_capable = true
}

source "second" {
  label        = "Second"
  kind         = "generator"
  voltage      = "120 V ac"
  rated        = "15 A"
  neutral_bond = "bonded"

  parallel_capable = true
}

conductor "g" {
  from      = source.generator
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "h" {
  from      = source.second
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
