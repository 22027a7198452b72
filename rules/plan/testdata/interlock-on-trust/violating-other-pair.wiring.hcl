# Both generators meet the shore whatever is done; the habit alone keeps them off each other.
system "t" {
  practice = ["cabin"]
}

source "shore" {
  label        = "Post"
  kind         = "shore"
  voltage      = "120 V ac"
  rated        = "30 A"
  neutral_bond = "bonded"
}

source "first" {
  label        = "First generator"
  kind         = "generator"
  voltage      = "120 V ac"
  rated        = "30 A"
  neutral_bond = "bonded"
}

source "second" {
  label        = "Second generator"
  kind         = "generator"
  voltage      = "120 V ac"
  rated        = "30 A"
  neutral_bond = "bonded"
}

bus "panel" {
}

conductor "a" {
  from      = source.shore
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "b" {
  from      = source.first
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "c" {
  from      = source.second
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "d" {
  from      = bus.panel
  to        = load.outlet
  size      = "10 AWG"
  grounding = "10 AWG"
}

load "outlet" {
  label      = "Outlet"
  kind       = "other"
  draw       = "10 A"
  receptacle = true
}

interlock "one_runs" { # want warning "Only trust in \"one_runs\" keeps away a danger: ac/two-sources-joined of \"Second generator\""
  never = [{ source.first = "present", source.second = "present" }]
  by    = "habit"
}
