system "dunnock" {}

compartment "box" {}

source "pack" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12.8 V"
  capacity    = "100 Ah"
  compartment = compartment.box
}

fuse "pack" {
  rating = "80 A"
  on     = source.pack
}

conductor "pack_lead" {
  from   = fuse.pack.load
  to     = bus.post
  size   = "8 AWG"
  length = "1 m"
}

bus "post" {
  compartment = compartment.box
}

conductor "house_side" {
  from   = fuse.pack.load
  to     = switch.join.house
  size   = "8 AWG"
  length = "1 m"
}

switch "join" {
  terminals = ["house", "start"]
  position "off" {}
  position "on" { joins = [["house", "start"]] }
}

# Written from the lithium side toward the starting battery.
conductor "joint" {
  from   = switch.join.start
  to     = source.start
  size   = "8 AWG"
  length = "2 m"
}

source "start" {
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "80 Ah"
}

conductor "feed" {
  from       = bus.post
  to         = switch.off.battery
  size       = "8 AWG"
  length     = "1 m"
  insulation = "90 C"
}

switch "off" {
  terminals = ["battery", "panel"]
  rating    = "100 A"
  position "off" {}
  position "on" { joins = [["battery", "panel"]] }
}

switch "three" {
  terminals = ["a", "b", "bar"]
  voltage_rating = "32 V dc"
  position "a" { joins = [["a", "bar"]] }
  position "b" { joins = [["b", "bar"]] }
}

conductor "panel_feed" {
  from   = switch.off.panel
  to     = bus.panel
  size   = "8 AWG"
  length = "1 m"
}

bus "panel" {}

branch "lamp" {
  from = bus.panel
  fuse {
    label  = "Lamp, 10 A"
    kind   = "blade"
    rating = "10 A"
  }
  conductor { size = "14 AWG" }
  load "lamp" { draw = "2 A" }
}

branch "alarm" {
  from = bus.panel
  fuse { rating = "2 A" }
  conductor { size = "16 AWG" }
  load "alarm" { kind = "alarm" }
}

fuse "bare" {
  on = bus.panel
}

source "roof" {
  kind     = "solar"
  voltage  = "36 V"
  series   = 4
  parallel = 1
}

conductor "roof_run" {
  from = source.roof
  to   = converter.tracker.in
  size = "10 AWG"
}

converter "tracker" {
  kind = "mppt"
  input { voltage_max = "75 V" }
  output { current_max = "15 A" }
}

conductor "tracker_lead" {
  from = converter.tracker.out
  to   = fuse.tracker_out.load
  size = "10 AWG"
}

fuse "tracker_out" {
  rating = "20 A"
  on     = bus.panel
}

connector "tow" {
  style   = "seven"
  rating  = "20 A"
  tow     = true
  exposed = "fixed"
}

source "shore" {
  kind    = "shore"
  voltage = "120 V ac"
}

fuse "shore" {
  kind           = "breaker"
  rating         = "15 A"
  voltage_rating = "120 V ac"
  on             = source.shore
}

# A neighbour's circuit, which feeds nothing back: no way upstream leads over it.
conductor "idle_lead" {
  from   = bus.panel
  to     = switch.idle.bar
  size   = "14 AWG"
  bundle = 6
}

switch "idle" {
  terminals = ["bar", "lamp"]
  position "off" {}
  position "on" { joins = [["bar", "lamp"]] }
}

# A converter gone round: both wires end on its output.
converter "round" {
  kind = "dc-dc"
  input { voltage_max = "16 V" }
  output {
    voltage     = "17 V"
    current_max = "10 A"
  }
}

conductor "round_in" {
  from = connector.tow.fixed
  to   = converter.round.out
  size = "10 AWG"
}

conductor "round_out" {
  from = converter.round.out
  to   = connector.tow.free
  size = "10 AWG"
}

source "engine" {
  kind    = "alternator"
  voltage = "12 V"
  rated   = "60 A"
}

source "east" {
  kind     = "solar"
  voltage  = "18 V"
  parallel = 2
}

# A thin wire behind a plug that sits on a bus.
connector "bench" {
  style = "two"
  on    = bus.post
}

conductor "bench_lamp" {
  from   = connector.bench.free
  to     = load.bench
  size   = "16 AWG"
  length = "2 m"
}

load "bench" { draw = "2 A" }
