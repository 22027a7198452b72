# No panel: the generator feeds two outlets in a row.
system "t" {
  practice = ["cabin"]
}

source "generator" {
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  rated        = "15 A"
  neutral_bond = "bonded"
}

conductor "a" {
  from      = source.generator
  to        = load.first
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "b" {
  from      = load.first
  to        = load.second
  size      = "10 AWG"
  grounding = "10 AWG"
}

load "first" {
  kind       = "other"
  draw       = "2 A"
  receptacle = true
}

load "second" {
  kind       = "other"
  draw       = "2 A"
  receptacle = true
}
