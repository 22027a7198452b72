# 16 AWG is 13.4 mohm/m at 20 C and 14.5 at 40 C: 20 m of pair at 5 A lose 2.9 V of 12 V. The bow
# light, 1 A at the same distance, loses 0.58 V, above 3 %. The panel feed loses 0.47 V.

system "wren" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "fan" {
  kind   = "terminal"
  rating = "10 A"
  on     = source.house
}

conductor "fan" {
  from   = fuse.fan.load
  to     = load.fan
  size   = "16 AWG"
  length = "20 m"
}

load "fan" { # want notice "Between \"House battery\" and \"Fan\" 2\\.9\\d* V is lost with everything on, 24 % of nominal; the limit is 10 %"
  label    = "Fan"
  kind     = "motor"
  draw     = "5 A"
  behavior = "constant-current"
  critical = "none"
}

fuse "bow" {
  kind   = "terminal"
  rating = "10 A"
  on     = source.house
}

conductor "bow" {
  from   = fuse.bow.load
  to     = load.bow
  size   = "16 AWG"
  length = "20 m"
}

load "bow" { # want caution "\"Bow light\" 0\\.58\\d* V is lost with everything on, 4\\.[89] % of nominal; the limit is 3 %"
  label    = "Bow light"
  kind     = "light"
  draw     = "1 A"
  behavior = "constant-current"
  critical = "navigation"
}

fuse "panel" {
  kind   = "terminal"
  rating = "40 A"
  on     = source.house
}

conductor "panel" { # want notice "Between \"House battery\" and the bus at the end of \"Panel feed\" 0\\.4\\d* V is lost with everything on, .* the limit is 3 %"
  label  = "Panel feed"
  from   = bus.panel
  to     = fuse.panel.load
  size   = "10 AWG"
  length = "3 m"
}

bus "panel" {
}

conductor "galley" {
  from   = bus.panel
  to     = load.galley
  size   = "10 AWG"
  length = "1 m"
}

load "galley" {
  kind     = "other"
  draw     = "20 A"
  behavior = "constant-current"
}
