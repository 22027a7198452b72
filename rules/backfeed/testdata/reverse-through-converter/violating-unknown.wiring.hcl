# At night the roof is dead, and whether the tracker lets the battery out through it is not written.

system "stonechat" {
}

source "roof" {
  kind = "solar"
  voc  = "22 V"
  isc  = "9 A"
}

converter "tracker" { # want not-proven caution "Whether \"Tracker\" blocks reverse current is not written: with \"roof\" absent, \"house\" keeps its dead input live"
  label = "Tracker"
  kind  = "mppt"
}

conductor "roof" {
  from   = source.roof
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "5 m"
}

fuse "house" {
  kind   = "blade"
  rating = "20 A"
  on     = source.house
}

conductor "charge" {
  from   = converter.tracker.out
  to     = fuse.house.load
  size   = "10 AWG"
  length = "1 m"
}

source "house" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}
