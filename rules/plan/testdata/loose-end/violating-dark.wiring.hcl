# Two buses and what joins them, on no source; and a battery that is wired well.

system "t" {
  practice = ["general"]
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "class-t"
  rating = "30 A"
  on     = source.pack
}

conductor "a" {
  from   = fuse.main.load
  to     = load.lamp
  size   = "8 AWG"
  length = "1 m"
}

load "lamp" { draw = "1 A" }

bus "front" {}

bus "rear" {}

conductor "along" { # want not-proven warning "No source can reach \"along\""
  from   = bus.front
  to     = bus.rear
  size   = "14 AWG"
  length = "2 m"
}

conductor "again" {
  from   = bus.front
  to     = bus.rear
  size   = "14 AWG"
  length = "2 m"
}
