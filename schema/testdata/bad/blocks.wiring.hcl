system "gull" { title = "x" }
system "second" {}
sorce "pack" {}
zebra {}
fuse {}
fuse "main" "extra" {}
fuse "main" {}
fuse "two words" {}
fuse "-dash" {}
fuse "fuse" {
  raiting = "10 A"
  ratings {}
  rating {}
}
source "pack" {
  bms = {}
  label = "x"
}
source "pack2" {
  kind = "battery"
  bms {}
  bms "named" {}
  bmss {}
}
switch "select" {
  terminals = ["a", "b"]
  position {}
  position "on" "off" {}
  position "on" {}
  position "on" {
    join = [["a", "b"]]
  }
}
converter "boost" {
  kind = "dc-dc"
  input { profile = "agm" }
  output { accepts = "dc" }
}
load "pump" { switched = true }
let "x" {
  a = 1
  b {}
}
let { a = 2 }
parameter "size" {}
converter "none" {}
switch "none" {}
conductor "none" {}
house_rule "none" {}
waiver "none" {}
source "solar" {
  kind     = "solar"
  capacity = "100 Ah"
  rated    = "10 A"
  bms {}
}
conductor "nulls" {
  from = null
  to   = null
}
