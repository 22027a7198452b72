system "gull" {
  ambient = "10 C"
  coldest = "20 C"
}
compartment "bow_box" {
  ambient = "10 C"
  coldest = "20 C"
}
source "pack" {
  kind               = "battery"
  voltage            = "14.8 V"
  charge_voltage_max = "14.6 V"
  part_of            = source.pack
  removable          = true

  bms { opens_above = "14 V" }
}
source "roof" {
  kind    = "solar"
  voltage = "12 V ac"
  voc     = "18 V"
  vmp     = "22 V"
  isc     = "5 A"
  imp     = "6 A"
}
source "inlet" {
  kind    = "shore"
  voltage = "120 V dc"
}
source "fixed" { kind = "battery" }
fuse "main" {
  part_of           = source.fixed
  rating            = "100 A"
  interrupting      = "50 A"
  voltage_rating    = ["58 V dc", "32 V dc"]
  series_rated_with = fuse.main
}
switch "relay" {
  terminals = ["a", "b", "a", "line", "", "c"]
  cut_in    = "12.5 V"
  cut_out   = "13 V"
  senses    = ["d"]

  position "off" {}
  position "off" {}
  position "on" { joins = [["a", "e"], ["b"]] }
}
converter "boost" {
  kind = "dc-dc"
  input {
    voltage_min = "15 V"
    voltage_max = "12 V"
  }
}
connector "plug" {
  contacts   = ["brakes", "free", "brakes"]
  follows    = [connector.plug]
  apart_from = [connector.plug]
}
load "pump" {
  draw          = "5 A"
  power         = "60 W"
  surge         = "3 A"
  voltage_min   = "14 V"
  voltage_max   = "12 V"
  rated_voltage = "13 V"
}
conductor "loop" {
  from = fuse.main.load
  to   = fuse.main.load
}
mode "parked" {
  state = { switch.relay = "on", switch.relay = "off", source.pack = "here", connector.plug = "matted" }
}
interlock "one" { never = [{ switch.relay = "onn" }] }
