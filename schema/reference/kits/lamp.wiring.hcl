kit "lamp" {
  title = "A fused lamp"
}

parameter "feed" {
  notes = "The bus that it hangs on."
}

parameter "length" {}

parameter "power" {
  default = "10 W"
}

fuse "main" {
  kind   = "blade"
  rating = "3 A"
  on     = parameter.feed
}

conductor "lead" {
  from   = fuse.main.load
  to     = load.lamp
  size   = "16 AWG"
  length = parameter.length
}

load "lamp" {
  kind  = "light"
  power = parameter.power
}
