# The small battery only steadies what the large one feeds through a converter.

system "t" {
}

source "big" { # want caution "takes \"big\" off \"lamp\""
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "51.2 V"
  capacity  = "200 Ah"
}

source "small" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "20 Ah"
}

load "lamp" {
  kind = "other"
  draw = "5 A"
}

converter "down" {
  kind = "dc-dc"
  output {
    voltage     = "13.6 V"
    current_max = "30 A"
  }
}

conductor "w1" {
  from   = source.big
  to     = converter.down.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w2" {
  from   = converter.down.out
  to     = source.small
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = source.small
  to     = load.lamp
  size   = "2 AWG"
  length = "1 m"
}
