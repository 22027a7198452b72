# No outlet is fed, a charger is.
system "t" {
  practice = ["us-rv"]
}

source "generator" { # want warning "joined nowhere"
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  neutral_bond = "floating"
}

conductor "g" {
  from      = source.generator
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

bus "panel" {
}

conductor "c" {
  from      = bus.panel
  to        = converter.charger.in
  size      = "10 AWG"
  grounding = "10 AWG"
}

converter "charger" {
  kind = "charger"
}
