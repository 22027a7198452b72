system "gull" {}
bus "panel" {}
bus "plus" { polarity = "positive" }
branch "empty" { from = bus.panel }
branch "nowhere" {
  fuse {}
  conductor {}
  load "a" {}
}
branch "single" {
  from = bus.plus
  fuse "named" {
    on = bus.panel
  }
  fuse {}
  conductor {
    from     = bus.panel
    polarity = "positive"
    lenght   = "1 m"
  }
  load {}
  load "a" { draw = "1 V" }
  load "a" {}
  switch "b" {}
  rating = "5 A"
}
