# Parked, the selector joins the plug or the battery to the house, never both; on its way it joins all.

system "blink" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "battery" {
  from = source.house
  to   = switch.select.battery
}

switch "select" {
  terminals  = ["battery", "plug", "house"]
  transition = "make-before-break"
  position "battery" { joins = [["battery", "house"]] }
  position "plug" { joins = [["plug", "house"]] }
}

conductor "plug" {
  from = connector.plug.free
  to   = switch.select.plug
}

connector "plug" { # want warning "\"plug\" stays live on its free side: \"house\" puts 12.8 V"
  exposed = "free"
}

switch "unsaid" {
  terminals = ["battery", "plug", "lamp"]
  position "battery" { joins = [["battery", "lamp"]] }
  position "plug" { joins = [["plug", "lamp"]] }
}

conductor "unsaid_battery" {
  from = source.house
  to   = switch.unsaid.battery
}

conductor "unsaid_plug" {
  from = connector.second.free
  to   = switch.unsaid.plug
}

connector "second" { # want caution not-proven "turns on `transition` of switch.unsaid"
  exposed = "free"
}
