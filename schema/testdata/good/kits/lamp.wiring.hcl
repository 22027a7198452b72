kit "lamp" { title = "A fused lamp" }

parameter "feed" { notes = "The bus that it hangs on." }

parameter "power" {}

parameter "size" { default = "16 AWG" }

fuse "main" {
  kind   = "blade"
  rating = "3 A"
  on     = parameter.feed
}

conductor "lead" {
  from = fuse.main.load
  to   = load.lamp
  size = parameter.size
}

load "lamp" { power = parameter.power }
