# A load that is needed on the road alone has two supplies there; at the camp, where it is not needed, the shared device takes it along: a caution.

system "van" {
}

source "pack" {
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "12.8 V"
  capacity      = "100 Ah"
  short_circuit = "2 kA"
}

source "road" {
  kind          = "battery"
  chemistry     = "agm"
  voltage       = "12 V"
  capacity      = "60 Ah"
  short_circuit = "2 kA"
  removable     = true
}

fuse "shared" {
  kind   = "blade"
  rating = "20 A"
  on     = source.pack
}

conductor "feed" {
  from   = fuse.shared.load
  to     = bus.panel
  size   = "8 AWG"
  length = "1 m"
}

conductor "road" {
  from   = source.road
  to     = bus.panel
  size   = "8 AWG"
  length = "1 m"
}

bus "panel" {
}

fuse "pump" { # want caution "A short behind \"pump\" \\(15 A\\) may open \"shared\" \\(20 A\\) first, which also feeds \"brakes\""
  kind   = "blade"
  rating = "15 A"
  on     = bus.panel
}

conductor "pump" {
  from   = fuse.pump.load
  to     = load.pump
  size   = "12 AWG"
  length = "2 m"
}

load "pump" {
  draw     = "8 A"
  critical = "none"
}

conductor "brakes" {
  from   = bus.panel
  to     = load.brakes
  size   = "14 AWG"
  length = "2 m"
}

load "brakes" {
  draw      = "1 A"
  critical  = "life-safety"
  needed_in = [mode.road]
}

mode "road" {
  state = {
    source.road = "present"
  }
}

mode "camp" {
  state = {
    source.road = "absent"
  }
}
