# A plug of one shape on the inverter and on the battery; the seven-way family brings brakes where the
# other has its charge pin.

system "mains" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "inverter" {
  from = source.house
  to   = converter.inverter.in
}

converter "inverter" {
  label = "Inverter"
  kind  = "inverter"
  output {
    voltage = "230 V ac"
  }
}

conductor "out" {
  from = converter.inverter.out
  to   = connector.mains.fixed
}

connector "mains" { # want danger "the fixed half of \"mains\", with 230 V of \"Inverter\", then meets the free half of \"lamp\", which is made for 12 V of \"house\""
  style = "two-pin"
  key   = "white"
}

conductor "kettle" {
  from = connector.mains.free
  to   = load.kettle
}

load "kettle" {
  power = "500 W"
}

conductor "lamp_outlet" {
  from = source.house
  to   = connector.lamp.fixed
}

connector "lamp" { # want danger "\"lamp\" and \"mains\" fit each other"
  style = "two-pin"
  key   = "white"
}

conductor "lamp" {
  from = connector.lamp.free
  to   = load.lamp
}

load "lamp" {
  draw = "1 A"
}

# Contacts with names are held against contacts of the same name.
connector "tow" { # want warning "the fixed aux half of \"tow\", with 12 V of \"house\", then meets the free aux half of \"camera\", which is made for no supply"
  style    = "seven-way"
  key      = "slot"
  contacts = ["aux"]
}

conductor "aux" {
  from     = source.house.pos
  to       = connector.tow.fixed.aux
  polarity = "positive"
}

conductor "aux_use" {
  from     = connector.tow.free.aux
  to       = load.fridge.pos
  polarity = "positive"
}

conductor "aux_back" {
  from     = connector.tow.free.neg
  to       = load.fridge.neg
  polarity = "negative"
}

load "fridge" {
  draw = "8 A"
}

connector "camera" { # want warning "\"camera\" and \"tow\" fit each other"
  style    = "seven-way"
  key      = "slot"
  contacts = ["aux"]
}

conductor "camera" {
  from     = connector.camera.free.aux
  to       = load.camera.pos
  polarity = "positive"
}

conductor "camera_back" {
  from     = connector.camera.free.neg
  to       = load.camera.neg
  polarity = "negative"
}

load "camera" {
  draw = "0.2 A"
}
