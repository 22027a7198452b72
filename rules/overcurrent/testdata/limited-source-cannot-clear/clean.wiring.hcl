# The device at the battery's end of a charge run guards against the battery; a shore inlet drives its breaker far above its rating.

system "van" {
}

source "pack" {
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "12.8 V"
  capacity      = "100 Ah"
  short_circuit = "2 kA"
}

fuse "charge" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.pack
}

conductor "charge" {
  from   = converter.charger.out
  to     = fuse.charge.load
  size   = "8 AWG"
  length = "3 m"
}

converter "charger" {
  kind           = "charger"
  blocks_reverse = true
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

source "shore" {
  kind          = "shore"
  voltage       = "120 V ac"
  rated         = "30 A"
  short_circuit = "2 kA"
}

fuse "main" {
  kind   = "breaker"
  rating = "30 A"
  on     = source.shore
}

conductor "cord" {
  from   = fuse.main.load
  to     = load.heater
  size   = "10 AWG"
  length = "8 m"
}

load "heater" {
  draw          = "10 A"
  rated_voltage = "120 V ac"
}
