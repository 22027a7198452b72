# The generator is not running; its bond is joined to what the shore feeds all the same.
system "t" {
  practice = ["us-rv"]
}

source "shore" { # want warning "joined in 2 places, with \"Post\" present"
  label        = "Post"
  kind         = "shore"
  voltage      = "120 V ac"
  neutral_bond = "bonded"
}

source "generator" { # want warning "joined in 2 places"
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  neutral_bond = "bonded"
}

conductor "s" {
  from      = source.shore
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

switch "generator" {
  terminals = ["generator", "panel"]
  poles     = 1
}

conductor "g" {
  from      = source.generator
  to        = switch.generator.generator
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "h" {
  from      = switch.generator.panel
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
