# No coefficient: the table's 1.18 at -20 C gives 94.4 V, under 95 V. The array that goes straight to a
# battery stays at the battery's volts, and the lamp beside it is safe.

system "lapwing" {
  coldest = "-20 C"
}

source "roof" {
  kind   = "solar"
  voc    = "20 V"
  series = 4
}

converter "tracker" {
  kind = "mppt"
  input {
    voltage_max = "95 V"
  }
}

conductor "input" {
  from   = source.roof
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "4 m"
}

source "trickle" {
  kind = "solar"
  voc  = "21 V"
}

source "battery" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

conductor "trickle" {
  from   = source.trickle
  to     = source.battery
  size   = "16 AWG"
  length = "4 m"
}

conductor "lamp" {
  from   = source.battery
  to     = load.lamp
  size   = "16 AWG"
  length = "1 m"
}

load "lamp" {
  kind        = "light"
  draw        = "1 A"
  voltage_max = "15 V"
}
