kit "alone" { title = "Read on its own" }
parameter "size" {}
parameter "feed" {}
system "gull" {}
fuse "main" {
  on     = parameter.feed
  rating = "${parameter.size} A"
}
conductor "lead" {
  from = fuse.main.lode
  to   = load.lamp
  size = parameter.size
}
