# 20 A into 8 AWG needs no device at the charger. A big charger's thin lead is as short as a lead may be
# and ends in a device that guards it. What could push 60 A cannot be on while its wire is closed. And an
# array alone on its wire is no second source.

system "near" {
}

source "house" {
  label     = "House"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

fuse "house" {
  kind   = "anl"
  rating = "40 A"
  on     = source.house
}

conductor "run" {
  from   = fuse.house.load
  to     = converter.charger.out
  size   = "8 AWG"
  length = "6 m"
}

converter "charger" {
  kind           = "charger"
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

source "shore" {
  kind          = "shore"
  voltage       = "120 V ac"
  rated         = "15 A"
  short_circuit = "800 A"
}

conductor "cord" {
  from       = source.shore
  to         = converter.charger.in
  size       = "12 AWG"
  insulation = "90 C"
  length     = "3 m"
}

converter "big" {
  kind           = "charger"
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "60 A"
  }
}

conductor "cord_big" {
  from       = source.shore
  to         = converter.big.in
  size       = "12 AWG"
  insulation = "90 C"
  length     = "3 m"
}

conductor "stub" {
  from   = converter.big.out
  to     = fuse.big.line
  size   = "8 AWG"
  length = "18 in"
}

fuse "big" {
  kind   = "anl"
  rating = "40 A"
}

conductor "from_big" {
  from   = fuse.big.load
  to     = fuse.house.load
  size   = "8 AWG"
  length = "4 m"
}

source "engine" {
  kind              = "generator"
  voltage           = "120 V ac"
  rated             = "20 A"
  short_circuit     = "100 A"
}

converter "bench" {
  kind           = "charger"
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "60 A"
  }
}

conductor "bench_cord" {
  from       = source.engine
  to         = converter.bench.in
  size       = "12 AWG"
  insulation = "90 C"
  length     = "3 m"
}

switch "bench" {
  terminals = ["charger", "wire"]
}

interlock "bench" {
  never = [{ switch.bench = "closed", source.engine = "present" }]
  by    = "hardware"
}

conductor "bench" {
  from   = converter.bench.out
  to     = switch.bench.charger
  size   = "4 AWG"
  length = "1 m"
}

conductor "bench_thin" {
  from   = switch.bench.wire
  to     = fuse.house.load
  size   = "10 AWG"
  length = "1 m"
}

source "roof" {
  kind     = "solar"
  voc      = "40 V"
  isc      = "10 A"
  parallel = 3
}

conductor "roof" {
  from   = source.roof
  to     = converter.tracker.in
  size   = "12 AWG"
  length = "3 m"
}

converter "tracker" {
  kind           = "mppt"
  limits_current = true
  blocks_reverse = true
  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "tracker" {
  from   = converter.tracker.out
  to     = fuse.house.load
  size   = "8 AWG"
  length = "1 m"
}
