system "t" {
  practice = ["cabin"]
}

source "shore" {
  label        = "Utility"
  kind         = "shore"
  voltage      = "120 V ac"
  rated        = "30 A"
  neutral_bond = "bonded"
}

source "generator" {
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  rated        = "15 A"
  neutral_bond = "bonded"
}

switch "utility_main" {
  label     = "Utility main"
  terminals = ["supply", "panel"]
  poles     = 2

  position "off" {}
  position "on" { joins = [["supply", "panel"]] }
}

switch "generator_main" {
  label     = "Generator main"
  terminals = ["supply", "panel"]
  poles     = 2

  position "off" {}
  position "on" { joins = [["supply", "panel"]] }
}

conductor "a" {
  from      = source.shore
  to        = switch.utility_main.supply
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "b" {
  from      = switch.utility_main.panel
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "c" {
  from      = source.generator
  to        = switch.generator_main.supply
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "d" {
  from      = switch.generator_main.panel
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

interlock "slide" {
  never = [{ switch.utility_main = "on", switch.generator_main = "on" }]
  by    = "hardware"
}
