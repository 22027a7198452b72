# Two interlocks say the same, and of neither is it written what it is.
system "t" {
  practice = ["cabin"]
}

source "shore" { # want not-proven warning "Only \"slide\" and \"lock\" keep \"Generator\" off \"Utility\""
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
  neutral_bond = "floating"
}

conductor "a" {
  from      = source.shore
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

bus "panel" {
  label = "AC panel"
}

load "outlet" { # want not-proven warning "Only \"slide\" and \"lock\" keep"
  label      = "Outlet"
  kind       = "other"
  draw       = "10 A"
  receptacle = true
}

switch "from_panel" {
  label     = "From panel"
  terminals = ["supply", "outlet"]
  poles     = 2

  position "off" {}
  position "on" { joins = [["supply", "outlet"]] }
}

conductor "b" {
  from      = bus.panel
  to        = switch.from_panel.supply
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "c" {
  from      = switch.from_panel.outlet
  to        = load.outlet
  size      = "10 AWG"
  grounding = "10 AWG"
}

switch "from_generator" {
  label     = "From generator"
  terminals = ["supply", "outlet"]
  poles     = 2

  position "off" {}
  position "on" { joins = [["supply", "outlet"]] }
}

conductor "d" {
  from      = source.generator
  to        = switch.from_generator.supply
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "e" {
  from      = switch.from_generator.outlet
  to        = load.outlet
  size      = "10 AWG"
  grounding = "10 AWG"
}

interlock "slide" {
  never = [{ switch.from_panel = "on", switch.from_generator = "on" }]
}

interlock "lock" {
  never = [{ switch.from_panel = "on", switch.from_generator = "on" }]
}
