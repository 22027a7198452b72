# The running lights hang on the battery through a step-down that nothing else feeds.

system "boat" {
}

source "pack" { # want warning "\"Pack\" is asked for up to [0-9.]+ A .*, and gives 20 A"
  label           = "Pack"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "24 V"
  capacity        = "100 Ah"
  resistance      = "20 mohm"
  discharge_limit = "20 A"
}

conductor "heater" {
  from   = source.pack
  to     = load.heater
  size   = "8 AWG"
  length = "1 m"
}

load "heater" {
  draw     = "25 A"
  critical = "none"
}

conductor "down" {
  from   = source.pack
  to     = converter.down.in
  size   = "12 AWG"
  length = "1 m"
}

converter "down" {
  kind       = "dc-dc"
  efficiency = 0.9

  output {
    voltage     = "12 V"
    current_max = "10 A"
  }
}

conductor "running" {
  from   = converter.down.out
  to     = load.running
  size   = "12 AWG"
  length = "1 m"
}

load "running" {
  draw     = "3 A"
  critical = "navigation"
}
