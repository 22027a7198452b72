# Pulled under load: a heater's plug at 12 V, an array's above 60 V, a small one among fuel vapor, and one that does not say.

system "arc" {
  coldest = "0 C"
}

source "house" {
  label           = "House battery"
  kind            = "battery"
  chemistry       = "agm"
  voltage         = "12 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

conductor "heater_feed" {
  from = source.house
  to   = connector.heater.fixed
}

connector "heater" { # want caution "^\"Heater plug\" can be pulled apart while one contact carries up to 12 A in a circuit of up to .* V, and is not rated for that\\.$"
  label      = "Heater plug"
  load_break = false
}

conductor "heater" {
  from = connector.heater.free
  to   = load.heater
}

load "heater" {
  kind     = "heater"
  draw     = "12 A"
  behavior = "constant-current"
}

source "roof" {
  kind = "solar"
  voc  = "80 V"
  vmp  = "66 V"
  isc  = "5 A"
  imp  = "4.6 A"
}

conductor "roof" {
  from = source.roof
  to   = connector.roof.free
}

connector "roof" { # want warning "\"roof\" can be pulled apart while one contact carries up to 6.25 A in a circuit of up to 88 V"
  load_break = false
}

conductor "tracker" {
  from = connector.roof.fixed
  to   = converter.tracker.in
}

converter "tracker" {
  kind           = "mppt"
  blocks_reverse = true
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "30 A"
  }
}

conductor "charge" {
  from = converter.tracker.out
  to   = source.house
}

compartment "tank" {
  fuel_vapor = true
}

conductor "transfer" {
  from = source.house
  to   = connector.transfer.fixed
}

connector "transfer" { # want warning "\"transfer\" can be pulled apart while one contact carries up to 15 A"
  compartment = compartment.tank
  load_break  = false
}

conductor "pump" {
  from = connector.transfer.free
  to   = load.pump
}

load "pump" {
  kind     = "motor"
  draw     = "15 A"
  behavior = "constant-current"
}

conductor "unsaid" {
  from = source.house
  to   = connector.unsaid.fixed
}

connector "unsaid" { # want notice not-proven "\"unsaid\" can be pulled apart while one contact carries up to 11 A.*whether it is rated for that is not written"
}

conductor "kettle" {
  from = connector.unsaid.free
  to   = load.kettle
}

load "kettle" {
  draw     = "11 A"
  behavior = "constant-current"
}

conductor "unknown" {
  from = source.house
  to   = connector.unknown.fixed
}

connector "unknown" { # want notice not-proven "What \"unknown\" carries when it is pulled apart is not known: `draw` of load.unknown is missing"
  load_break = false
}

conductor "unknown_load" {
  from = connector.unknown.free
  to   = load.unknown
}

load "unknown" {
}
