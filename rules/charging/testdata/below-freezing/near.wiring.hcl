# Lead-acid in the cold; lithium in a heated cabin at a cold site; lithium in the cold with a charger
# that has a sensor, and a second charger that an interlock keeps away from it.

system "brambling" {
  coldest = "-25 C"
}

compartment "shed" {
  coldest = "-25 C"
}

compartment "cabin" {
  coldest = "5 C"
}

source "lead" {
  kind        = "battery"
  chemistry   = "flooded"
  voltage     = "12 V"
  capacity    = "90 Ah"
  compartment = compartment.shed
}

source "inside" {
  kind               = "battery"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "100 Ah"
  compartment        = compartment.cabin
  cold_charge_cutoff = false
}

source "outside" {
  kind               = "battery"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "100 Ah"
  compartment        = compartment.shed
  cold_charge_cutoff = false
}

source "roof" {
  kind = "solar"
  voc  = "22 V"
}

converter "sensed" {
  kind               = "mppt"
  cold_charge_cutoff = true
}

conductor "roof" {
  from   = source.roof
  to     = converter.sensed.in
  size   = "10 AWG"
  length = "4 m"
}

conductor "sensed" {
  from   = converter.sensed.out
  to     = source.outside
  size   = "8 AWG"
  length = "1 m"
}

source "grid" {
  kind    = "supply"
  voltage = "14 V"
  rated   = "20 A"
}

switch "bench" {
  terminals = ["supply", "outside", "inside", "lead"]
  any_order = true
  position "off" {
  }
  position "outside" {
    joins = [["supply", "outside"]]
  }
  position "inside" {
    joins = [["supply", "inside"]]
  }
  position "lead" {
    joins = [["supply", "lead"]]
  }
}

interlock "not_outside" {
  never = [{ switch.bench = "outside" }]
  by    = "hardware"
}

conductor "bench" {
  from   = source.grid
  to     = switch.bench.supply
  size   = "8 AWG"
  length = "1 m"
}

conductor "to_outside" {
  from   = switch.bench.outside
  to     = source.outside
  size   = "8 AWG"
  length = "1 m"
}

conductor "to_inside" {
  from   = switch.bench.inside
  to     = source.inside
  size   = "8 AWG"
  length = "1 m"
}

conductor "to_lead" {
  from   = switch.bench.lead
  to     = source.lead
  size   = "8 AWG"
  length = "1 m"
}
