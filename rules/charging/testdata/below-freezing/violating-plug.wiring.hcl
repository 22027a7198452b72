# Only while the tow plug is mated and the engine runs does the alternator reach the pack, and nothing
# limits it in the cold. The other battery sits nowhere that the plan names.

system "bunting" {
}

compartment "tongue" {
  label   = "Tongue box"
  coldest = "-20 C"
}

source "engine" {
  kind              = "alternator"
  rated             = "120 A"
  regulated_voltage = "14.4 V"
}

connector "tow" {
  label = "Tow plug"
  tow   = true
}

conductor "vehicle" {
  from   = source.engine
  to     = connector.tow.fixed
  size   = "8 AWG"
  length = "6 m"
}

conductor "trailer" {
  from   = connector.tow.free
  to     = source.pack
  size   = "8 AWG"
  length = "3 m"
}

source "pack" { # want warning "\"Pack\" sits in \"Tongue box\", where it gets down to -20 C, and \"engine\" can charge it"
  label              = "Pack"
  kind               = "battery"
  chemistry          = "li-ion"
  voltage            = "14.8 V"
  capacity           = "60 Ah"
  compartment        = compartment.tongue
  cold_charge_cutoff = false
}

conductor "second" {
  from   = connector.tow.free
  to     = source.spare
  size   = "8 AWG"
  length = "3 m"
}

source "spare" { # want not-proven "sits nowhere that the plan names"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "50 Ah"
}
