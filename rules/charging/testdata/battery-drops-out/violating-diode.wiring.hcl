# A diode between, wires drawn one by one: the pack behind it is still all that holds the alternator.
system "teal" {}

source "alternator" { # want warning "If the BMS of \"Pack\" opens while \"Alternator\" charges it.*\"Gas alarm\" and \"radio\" see"
  label             = "Alternator"
  kind              = "alternator"
  regulated_voltage = "14.4 V"
  rated             = "80 A"
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    opens_above = "14.6 V"
  }
}

bus "house" {}

converter "isolator" {
  label = "Isolator"
  kind  = "diode"
}

conductor "charge" {
  from     = source.alternator.pos
  to       = converter.isolator.in.pos
  size     = "8 AWG"
  polarity = "positive"
}

conductor "charge_back" {
  from     = source.alternator.neg
  to       = converter.isolator.in.neg
  size     = "8 AWG"
  polarity = "negative"
}

conductor "out" {
  from     = bus.house.pos
  to       = converter.isolator.out.pos
  size     = "8 AWG"
  polarity = "positive"
}

conductor "out_back" {
  from     = bus.house.neg
  to       = converter.isolator.out.neg
  size     = "8 AWG"
  polarity = "negative"
}

conductor "pack" {
  from     = source.pack.pos
  to       = bus.house.pos
  size     = "8 AWG"
  polarity = "positive"
}

conductor "pack_back" {
  from     = source.pack.neg
  to       = bus.house.neg
  size     = "8 AWG"
  polarity = "negative"
}

conductor "alarm" {
  from     = bus.house.pos
  to       = load.alarm.pos
  size     = "8 AWG"
  polarity = "positive"
}

conductor "alarm_back" {
  from     = bus.house.neg
  to       = load.alarm.neg
  size     = "8 AWG"
  polarity = "negative"
}

conductor "radio" {
  from     = bus.house.pos
  to       = load.radio.pos
  size     = "8 AWG"
  polarity = "positive"
}

conductor "radio_back" {
  from     = bus.house.neg
  to       = load.radio.neg
  size     = "8 AWG"
  polarity = "negative"
}

load "alarm" {
  label       = "Gas alarm"
  kind        = "alarm"
  draw        = "0.1 A"
  voltage_max = "16 V"
}

load "radio" {
  kind = "electronics"
  draw = "2 A"
}

