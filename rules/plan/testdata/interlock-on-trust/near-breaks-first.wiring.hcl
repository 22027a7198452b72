# The switch breaks before it makes: nothing rests on the habit.
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
  transition = "break-before-make"

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

interlock "one_runs" {
  never = [{ source.first = "present", source.second = "present" }]
  by    = "habit"
}
