# Only in an overlap, of which the plan does not say whether there is one.

system "t" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "150 Ah"
}

converter "tracker" { # want not-proven caution "with \"choice\" at run>test .overlap.: nothing limits its current. Whether that can be turns on `transition` of switch.choice"
  kind = "mppt"
  input {
    voltage_max = "100 V"
    current_max = "15 A"
  }
  output {
    voltage     = "14.4 V"
    current_max = "15 A"
  }
}

source "array" {
  kind = "solar"
  voc  = "40 V"
  isc  = "8 A"
  vmp  = "33 V"
  imp  = "7.5 A"
}

switch "choice" {
  terminals = ["panel", "tracker", "pack"]
  position "run" {
    joins = [["panel", "tracker"]]
  }
  position "test" {
    joins = [["panel", "pack"]]
  }
}

conductor "w1" {
  from   = source.array
  to     = switch.choice.panel
  size   = "2 AWG"
  length = "1 m"
}

conductor "w2" {
  from   = source.pack
  to     = switch.choice.pack
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = switch.choice.tracker
  to     = converter.tracker.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = converter.tracker.out
  to     = source.pack
  size   = "2 AWG"
  length = "1 m"
}
