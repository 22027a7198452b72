# The habit is not needed: a slide does the same.
system "t" {
  practice = ["cabin"]
}

source "utility" {
  kind         = "shore"
  voltage      = "120 V ac"
  neutral_bond = "bonded"
}

source "generator" {
  kind         = "generator"
  voltage      = "120 V ac"
  neutral_bond = "floating"
}

switch "utility" {
  terminals = ["supply", "panel"]
  poles     = 2

  position "off" {}
  position "on" { joins = [["supply", "panel"]] }
}

switch "generator" {
  terminals = ["supply", "panel"]
  poles     = 2

  position "off" {}
  position "on" { joins = [["supply", "panel"]] }
}

bus "panel" {
}

conductor "a" {
  from = source.utility
  to   = switch.utility.supply
  size = "10 AWG"
}

conductor "b" {
  from = switch.utility.panel
  to   = bus.panel
  size = "10 AWG"
}

conductor "c" {
  from = source.generator
  to   = switch.generator.supply
  size = "10 AWG"
}

conductor "d" {
  from = switch.generator.panel
  to   = bus.panel
  size = "10 AWG"
}

conductor "e" {
  from = bus.panel
  to   = load.outlet
  size = "10 AWG"
}

load "outlet" {
  kind       = "other"
  draw       = "10 A"
  receptacle = true
}

interlock "sticker" {
  never = [{ switch.utility = "on", switch.generator = "on" }]
  by    = "habit"
}

interlock "slide" {
  never = [{ switch.utility = "on", switch.generator = "on" }]
  by    = "hardware"
}
