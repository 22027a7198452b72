# What is left out is asked for: an alarm's own battery, and any alarm at all where gas is burnt.

system "dunnock" {
}

source "battery" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

switch "off" {
  label     = "Main switch"
  terminals = ["a", "b"]
  poles     = 2
}

conductor "one" {
  from   = source.battery
  to     = switch.off.a
  size   = "10 AWG"
  length = "1 m"
}

conductor "two" {
  from   = switch.off.b
  to     = load.smoke
  size   = "16 AWG"
  length = "1 m"
}

load "smoke" { # want not-proven "\"Smoke alarm\" goes dark with \"Main switch\" at open, and whether it has a battery of its own is not written"
  label    = "Smoke alarm"
  kind     = "alarm"
  draw     = "50 mA"
  critical = "life-safety"
}
