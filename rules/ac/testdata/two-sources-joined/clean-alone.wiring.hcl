system "t" {
  practice = ["us-rv"]
}

source "shore" {
  label        = "Post"
  kind         = "shore"
  voltage      = "120 V ac"
  rated        = "30 A"
  neutral_bond = "bonded"
}

conductor "cord" {
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
