# A hard one: the alarm and its relay come out of a kit, and the relay follows the shore power that
# nobody thinks of; the battery is always there and does not help.

system "dotterel" {
}

source "battery" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "shore" {
  label   = "Shore power"
  kind    = "shore"
  voltage = "120 V ac"
}

use "bunk" {
  kit    = "./kits/alarm.wiring.hcl"
  feeder = source.shore
}

conductor "feed" {
  from   = source.battery
  to     = use.bunk.switch.relay.a
  size   = "16 AWG"
  length = "2 m"
}
