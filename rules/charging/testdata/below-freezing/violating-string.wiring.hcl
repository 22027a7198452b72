# A hard one: two 12 V packs in series drawn as blocks; the charger is across both, so it charges the
# lower one without touching its positive. The cut-off of the lower one works only at -10 C.

system "redwing" {
  coldest = "-15 C"
}

compartment "locker" {
  label   = "Locker"
  coldest = "-5 C"
}

source "upper" { # want not-proven "not written: `cold_charge_cutoff` of source.upper"
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12.8 V"
  capacity    = "100 Ah"
  compartment = compartment.locker
}

source "lower" { # want warning "\"Lower pack\" sits in \"Locker\", where it gets down to -5 C, and \"charger\" can charge it"
  label              = "Lower pack"
  kind               = "battery"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "100 Ah"
  compartment        = compartment.locker
  cold_charge_cutoff = true
  bms {
    opens_charge_below = "-10 C"
  }
}

conductor "link" {
  from     = source.upper.neg
  to       = source.lower.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "0.2 m"
}

source "shore" {
  kind    = "shore"
  voltage = "120 V ac"
  rated   = "15 A"
}

converter "charger" {
  kind               = "charger"
  cold_charge_cutoff = false
}

conductor "shore" {
  from   = source.shore
  to     = converter.charger.in
  size   = "14 AWG"
  length = "2 m"
}

switch "charge" {
  terminals = ["a", "b"]
}

conductor "charge_plus" {
  from     = converter.charger.out.pos
  to       = switch.charge.a.pos
  polarity = "positive"
  size     = "8 AWG"
  length   = "1 m"
}

conductor "charge_on" {
  from     = switch.charge.b.pos
  to       = source.upper.pos
  polarity = "positive"
  size     = "8 AWG"
  length   = "1 m"
}

conductor "charge_minus" {
  from     = converter.charger.out.neg
  to       = source.lower.neg
  polarity = "negative"
  size     = "8 AWG"
  length   = "1 m"
}
