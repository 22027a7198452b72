system "gull" {}

fuse "main" { kind = "blade" rating = "10 A" }

fuse "commas" { kind = "blade", rating = "10 A" }

fuse "half" { kind = "blade"
  rating = "10 A"
}

fuse "after" {
  raiting = "10 A"
}

source "pack" { bms { opens_above = "15 V" } }
