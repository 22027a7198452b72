# The relay to the starting battery follows the engine, and an interlock keeps shore power away while
# it runs. The second house battery belongs to the bank of the first. The lift-out pack is reached by
# 150 m of thin wire only.

system "goldcrest" {
}

source "shore" {
  kind    = "shore"
  voltage = "120 V ac"
  rated   = "30 A"
}

source "engine" {
  kind  = "alternator"
  rated = "70 A"
}

interlock "one" {
  never = [{ source.shore = "present", source.engine = "present" }]
  by    = "hardware"
}

converter "center" {
  kind = "load-center"
  output {
    voltage     = "13.6 V"
    current_max = "25 A"
  }
}

conductor "shore" {
  from   = source.shore
  to     = converter.center.in
  size   = "10 AWG"
  length = "3 m"
}

conductor "charge" {
  from   = converter.center.out
  to     = source.first
  size   = "8 AWG"
  length = "3 m"
}

source "first" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

conductor "bank" {
  from   = source.first
  to     = source.second
  size   = "4 AWG"
  length = "0.3 m"
}

source "second" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

switch "relay" {
  kind      = "relay"
  terminals = ["house", "starting"]
  follows   = source.engine
}

conductor "relay_house" {
  from   = source.first
  to     = switch.relay.house
  size   = "8 AWG"
  length = "1 m"
}

conductor "relay_starting" {
  from   = switch.relay.starting
  to     = source.starting
  size   = "8 AWG"
  length = "4 m"
}

source "starting" {
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "70 Ah"
}

conductor "engine" {
  from   = source.engine
  to     = source.starting
  size   = "4 AWG"
  length = "1 m"
}

fuse "far" {
  kind   = "blade"
  rating = "5 A"
  on     = source.first
}

conductor "far" {
  from   = fuse.far.load
  to     = source.pack
  size   = "18 AWG"
  length = "150 m"
}

source "pack" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "20 Ah"
  removable = true
}
