# A hard one: the alarm has two feeds, each through its own switch, and an interlock that lets only
# one of them be closed. Neither position is off by name; both open together is what darkens it.

system "godwit" {
}

source "bow" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "40 Ah"
}

source "stern" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "40 Ah"
}

switch "bow" {
  label     = "Bow feed"
  terminals = ["a", "b"]
}

switch "stern" {
  label     = "Stern feed"
  terminals = ["a", "b"]
}

interlock "one_feed" {
  never = [{ switch.bow = "closed", switch.stern = "closed" }]
  by    = "hardware"
}

conductor "bow_in" {
  from   = source.bow
  to     = switch.bow.a
  size   = "16 AWG"
  length = "1 m"
}

conductor "stern_in" {
  from   = source.stern
  to     = switch.stern.a
  size   = "16 AWG"
  length = "1 m"
}

conductor "bow_out" {
  from   = switch.bow.b
  to     = load.alarm
  size   = "16 AWG"
  length = "1 m"
}

conductor "stern_out" {
  from   = switch.stern.b
  to     = load.alarm
  size   = "16 AWG"
  length = "1 m"
}

load "alarm" { # want danger "\"Gas alarm\" goes dark with"
  label       = "Gas alarm"
  kind        = "alarm"
  draw        = "100 mA"
  critical    = "life-safety"
  own_battery = false
}
