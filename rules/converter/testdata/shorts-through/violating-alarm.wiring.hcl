# An alarm counts however little it draws.

system "t" {
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "48 V"
  capacity  = "100 Ah"
}

conductor "in" {
  from   = source.pack
  to     = converter.step.in
  size   = "10 AWG"
  length = "2 m"
}

converter "step" { # want "lies on \"Gas alarm\": 58.4 V"
  label      = "Step-down"
  kind       = "dc-dc"
  efficiency = 0.92
  isolated   = false

  output {
    voltage     = "13.2 V"
    current_max = "20 A"
  }
}

conductor "out" {
  from   = converter.step.out
  to     = bus.low
  size   = "10 AWG"
  length = "2 m"
}

bus "low" {
  label = "12 V bus"
}

fuse "alarm" {
  label          = "Gas alarm, 10 A"
  kind           = "blade"
  rating         = "10 A"
  voltage_rating = "32 V dc"
  on             = bus.low
}

conductor "alarm" {
  from   = fuse.alarm.load
  to     = load.alarm
  size   = "10 AWG"
  length = "2 m"
}

load "alarm" {
  label       = "Gas alarm"
  kind        = "alarm"
  draw        = "0.1 A"
  voltage_max = "16 V"
}
