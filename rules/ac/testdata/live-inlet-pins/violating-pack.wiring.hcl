# A portable pack that lifts out with its inverter, plugged into an outlet of the trailer: the inlet at the other end is live.
system "t" {
  practice = ["us-rv"]
}

source "pack" {
  label     = "Portable pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "80 Ah"
  removable = true
}

conductor "inside" {
  part_of = source.pack
  from    = source.pack
  to      = converter.pack.in
  size    = "4 AWG"
}

converter "pack" {
  label        = "Pack's outlet"
  part_of      = source.pack
  kind         = "inverter"
  neutral_bond = "floating"

  output {
    voltage = "120 V ac"
  }
}

connector "pack" {
  label   = "Pack cord"
  style   = "household"
  exposed = "none"
}

conductor "p" {
  from      = converter.pack.out
  to        = connector.pack.free
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "q" {
  from      = connector.pack.fixed
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
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
  to        = connector.inlet.free
  size      = "10 AWG"
  grounding = "10 AWG"
}

connector "inlet" { # want danger "live from \"Pack's outlet\", with \"Inlet\" unmated, \"Pack cord\" mated and \"Portable pack\" present"
  label   = "Inlet"
  style   = "30 A inlet"
  exposed = "fixed"
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
