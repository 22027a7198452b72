# A battery on the output holds the array down.

system "t" {
}

source "array" {
  kind            = "solar"
  voc             = "100 V"
  isc             = "10 A"
  vmp             = "82 V"
  imp             = "9 A"
  voc_coefficient = "-0.3 %/C"
  coldest         = "-10 C"
}

converter "down" {
  kind     = "dc-dc"
  isolated = false
  output {
    voltage     = "13.6 V"
    current_max = "20 A"
  }
}

load "lamp" {
  kind        = "other"
  draw        = "5 A"
  voltage_max = "16 V"
}

conductor "w1" {
  from   = source.array
  to     = converter.down.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w2" {
  from   = converter.down.out
  to     = load.lamp
  size   = "2 AWG"
  length = "1 m"
}

source "house" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
}

conductor "w3" {
  from   = source.house
  to     = load.lamp
  size   = "2 AWG"
  length = "1 m"
}
