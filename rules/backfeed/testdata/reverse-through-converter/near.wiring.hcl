# A charger blocks by kind. The converter that is there to charge either side is guarded at both
# ends. The third does not block, but both batteries are alike and always there.

system "wagtail" {
}

source "shore" {
  kind    = "shore"
  voltage = "120 V ac"
  rated   = "15 A"
}

converter "charger" {
  kind = "charger"
}

conductor "shore" {
  from   = source.shore
  to     = converter.charger.in
  size   = "14 AWG"
  length = "3 m"
}

conductor "charge" {
  from   = converter.charger.out
  to     = source.house
  size   = "8 AWG"
  length = "1 m"
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "house" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.house
}

converter "both" {
  kind           = "dc-dc"
  blocks_reverse = false
  charges        = [source.starting, source.house]
}

conductor "both_out" {
  from   = converter.both.out
  to     = fuse.house.load
  size   = "8 AWG"
  length = "1 m"
}

switch "isolator" {
  terminals = ["a", "b"]
}

fuse "starting" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.starting
}

conductor "both_in" {
  from   = converter.both.in
  to     = switch.isolator.a
  size   = "8 AWG"
  length = "1 m"
}

conductor "starting" {
  from   = switch.isolator.b
  to     = fuse.starting.load
  size   = "8 AWG"
  length = "1 m"
}

source "starting" {
  kind      = "battery"
  role      = "starting"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "60 Ah"
}

converter "alike" {
  kind           = "dc-dc"
  blocks_reverse = false
}

conductor "alike_in" {
  from   = source.starting
  to     = converter.alike.in
  size   = "8 AWG"
  length = "1 m"
}

conductor "alike_out" {
  from   = converter.alike.out
  to     = source.house
  size   = "8 AWG"
  length = "1 m"
}
