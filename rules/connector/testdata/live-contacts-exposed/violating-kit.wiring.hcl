# Outlets from a kit, with pins where the sockets should be.

system "kits" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

use "rear" {
  kit  = "./outlet.wiring.hcl"
  bare = "fixed"
}

use "front" {
  kit  = "./outlet.wiring.hcl"
  bare = "free"
}

conductor "rear" {
  from = source.house
  to   = use.rear.fuse.outlet.line
}

conductor "front" {
  from = source.house
  to   = use.front.fuse.outlet.line
}
