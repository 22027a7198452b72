# One pole is switched; the inverter's relay bonds only while it feeds the house.
system "t" {
  practice = ["us-rv"]
}

source "generator" {
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  neutral_bond = "floating"
}

conductor "g" {
  from      = source.generator
  to        = bus.x
  size      = "10 AWG"
  grounding = "10 AWG"
}

bus "x" {
}

conductor "jumper" {
  from     = bus.x.neutral
  to       = bus.x.ground
  polarity = "negative"
  size     = "10 AWG"
}

conductor "to_load" {
  from      = bus.x
  to        = load.heater
  size      = "10 AWG"
  grounding = "10 AWG"
}

load "heater" {
  kind  = "heater"
  power = "1000 W"
}
