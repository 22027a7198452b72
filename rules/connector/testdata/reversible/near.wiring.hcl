# No key, and no harm: a barrel, a plug that is never drawn, alternating current, nothing live, and a
# bolted battery.

system "near" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "barrel" {
  from = source.house
  to   = connector.barrel.fixed
}

connector "barrel" {
  style = "Barrel, 5.5 mm"
}

conductor "fast" {
  from = source.house
  to   = connector.fast.fixed
}

connector "fast" {
  key   = "none"
  mated = "always"
}

source "shore" {
  kind    = "shore"
  voltage = "230 V ac"
}

conductor "cord" {
  from = source.shore
  to   = connector.mains.free
}

connector "mains" {
  key = "none"
}

conductor "signal" {
  from = connector.signal.free
  to   = load.gauge
}

connector "signal" {
  key = "none"
}

load "gauge" {
  draw = "10 mA"
}
