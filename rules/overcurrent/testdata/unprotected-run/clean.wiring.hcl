# Every battery has its device on its own post, or within the distance.

system "clean" {
  practice = ["us-boat", "us-rv"]
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
}

fuse "pack_main" {
  kind   = "class-t"
  rating = "150 A"
  on     = source.pack
}

conductor "pack_feed" {
  from       = fuse.pack_main.load
  to         = bus.panel
  size       = "2 AWG"
  insulation = "105 C"
  length     = "4 m"
}

bus "panel" {
}

branch "lights" {
  from = bus.panel
  fuse {
    kind   = "blade"
    rating = "10 A"
  }
  conductor {
    size   = "14 AWG"
    length = "6 m"
  }
  load "cabin" {
    draw = "3 A"
  }
}

source "start" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

conductor "start_post" {
  from   = source.start
  to     = fuse.start_main.line
  size   = "6 AWG"
  length = "15 cm"
}

fuse "start_main" {
  kind   = "anl"
  rating = "60 A"
}

conductor "start_feed" {
  from   = fuse.start_main.load
  to     = switch.combine.a
  size   = "6 AWG"
  length = "3 m"
}

switch "combine" {
  terminals = ["a", "b"]
}

conductor "combined" {
  from   = switch.combine.b
  to     = bus.panel
  size   = "6 AWG"
  length = "1 m"
}
