system "gull" {
  title    = 5
  practice = ["us-rv", "us-bote"]
  ambient  = "40 V"
  coldest  = "-300 C"
  revision = ["a"]
}
compartment "bow_box" {
  wet        = "true"
  ventilated = yes
  ambient    = "1200 C"
}
source "pack" {
  kind            = battery
  voltage         = 12.8
  capacity        = "100"
  resistance      = "6 Mohm"
  discharge_limit = "100 amps"
  charge_limit    = "0 A"
  usable          = 90
  series          = 0
  cells           = "4"
  parallel        = 1.5
  max_series      = 5000
  chemistry       = "lifepo"
}
source "roof" {
  kind           = "solar"
  voc_coefficient = "0.29 %/C"
  peak_sun       = "30 h"
  isc            = "1e9 A"
}
fuse "main" {
  kind           = null
  rating         = -10
  interrupting   = "-5 kA"
  voltage_rating = ["58 V dc", "12 A", 5]
  curve          = [["20 A", "5 s"], ["10 A", "1 s"]]
  trip           = "gfi 5 mA"
}
fuse "curves" {
  curve = ["20 A", "5 s"]
  trip  = "rcd 5 V"
}
fuse "curves2" {
  curve = [["20 A", "5 s"]]
  trip  = "rcd -5 mA"
}
fuse "curves3" {
  curve          = [["20 A", "5 s", "1 s"], ["40 A", "1 s"]]
  voltage_rating = [null]
}
fuse "curves4" {
  curve = [["20 A", "5 s"], ["40 A", "6 s"]]
  trip  = 5
}
fuse "curves5" { curve = [["20 V", "0 s"], ["40 A", "6 s"]] }
fuse "curves6" { curve = "20 A" }
converter "boost" {
  kind       = "dcdc"
  trigger    = "13 A"
  efficiency = "120 %"
}
converter "second" {
  kind    = "mppt"
  trigger = "engine"
}
switch "select" {
  terminals = "pack"
  poles     = 3
  position "on" { joins = ["pack", "house"] }
  position "off" { joins = [[1]] }
}
conductor "feed" {
  from   = source.pack
  to     = fuse.main.line
  size   = 10
  length = "-5 m"
  bundle = -1
}
conductor "feed2" {
  from = source.pack
  to   = fuse.main.load
  size = "10 mm"
}
load "pump" { hours_per_day = "25 h" }
mode "parked" { state = ["a"] }
interlock "one" { never = { source.roof = "absent" } }
interlock "two" { never = [{}] }
waiver "old" {
  rule  = "a/b"
  at    = source.pack
  until = "2026-13-01"
}
house_rule "thin" {
  for      = wire
  require  = true
  severity = "bad"
}
