kit "wrong" {}
kit "again" {}
parameter "size" {}
parameter "feed" {}
parameter "kit" {}
parameter "rating" { default = "10 V" }
system "inner" {}
mode "parked" {}
waiver "silent" {
  rule = "a/b"
  at   = fuse.main
}
fuse "main" {
  rating = parameter.rating
  on     = parameter.feed
}
conductor "out" {
  from = bus.panel
  to   = fuse.main.line
  size = parameter.sise
}
