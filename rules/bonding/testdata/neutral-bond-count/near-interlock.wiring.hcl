# The floating pack is kept out of the inlet by its plug.
system "t" {
  practice = ["us-rv"]
}

source "shore" {
  label        = "Post"
  kind         = "shore"
  voltage      = "120 V ac"
  neutral_bond = "bonded"
}

source "pack" {
  label        = "Pack"
  kind         = "generator"
  voltage      = "120 V ac"
  neutral_bond = "floating"
}

connector "shore" {
  label = "Shore cord"
  style = "30 A inlet"
}

conductor "shore_cord" {
  from      = source.shore
  to        = connector.shore.free
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "shore_lead" {
  from      = connector.shore.fixed
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

connector "pack" {
  label = "Pack cord"
  style = "30 A inlet"
}

conductor "pack_cord" {
  from      = source.pack
  to        = connector.pack.free
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "pack_lead" {
  from      = connector.pack.fixed
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

interlock "plug" {
  never = [{ connector.pack = "mated" }]
  by    = "hardware"
}
