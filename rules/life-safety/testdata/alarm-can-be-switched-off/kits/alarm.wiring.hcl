# An alarm behind a relay that follows what feeds it.

kit "alarm" {
  title = "Alarm with a relay"
}

parameter "feeder" {
  notes = "What the relay follows."
}

parameter "draw" {
  default = "80 mA"
}

switch "relay" {
  kind      = "relay"
  terminals = ["a", "b"]
  follows   = parameter.feeder
  position "released" {
  }
  position "pulled" {
    joins = [["a", "b"]]
  }
}

conductor "run" {
  from   = switch.relay.b
  to     = load.alarm
  size   = "16 AWG"
  length = "2 m"
}

load "alarm" { # want danger "\"alarm\" goes dark with \"Shore power\" absent"
  kind        = "alarm"
  draw        = parameter.draw
  critical    = "life-safety"
  own_battery = false
}
