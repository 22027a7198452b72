# The lamp hangs behind a diode on the output.

system "t" {
}

source "big" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "51.2 V"
  capacity  = "100 Ah"
}

converter "down" { # want warning "lies on \"lamp\": 58.4 V, and that bears 16 V"
  kind = "dc-dc"
  output {
    voltage     = "13.6 V"
    current_max = "20 A"
  }
  isolated = false
}

converter "diode" {
  kind = "diode"
}

load "lamp" {
  kind        = "other"
  draw        = "5 A"
  voltage_max = "16 V"
}

conductor "w1" {
  from   = source.big
  to     = converter.down.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w2" {
  from   = converter.down.out
  to     = converter.diode.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = converter.diode.out
  to     = load.lamp
  size   = "2 AWG"
  length = "1 m"
}
