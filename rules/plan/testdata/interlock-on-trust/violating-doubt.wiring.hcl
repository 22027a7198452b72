# Without the habit the supplies meet while the switch is thrown, if it makes before it breaks, which is not written.
system "t" {
  practice = ["us-rv"]
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

switch "transfer" {
  label     = "Transfer"
  terminals = ["first", "second", "panel"]
  poles     = 2

  position "first" { joins = [["first", "panel"]] }
  position "second" { joins = [["second", "panel"]] }
}

conductor "a" {
  from      = source.first
  to        = switch.transfer.first
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "b" {
  from      = source.second
  to        = switch.transfer.second
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "c" {
  from      = switch.transfer.panel
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

interlock "one_runs" { # want not-proven warning "Without \"one_runs\" there may be a danger: ac/two-sources-joined"
  never = [{ source.first = "present", source.second = "present" }]
  by    = "habit"
}
