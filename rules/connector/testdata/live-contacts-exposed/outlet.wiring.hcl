kit "outlet" {
  title = "A fused outlet"
}

parameter "bare" {
}

fuse "outlet" {
  kind   = "blade"
  rating = "10 A"
}

conductor "outlet" {
  from = fuse.outlet.load
  to   = connector.outlet.fixed
}

connector "outlet" { # want warning "\"outlet\" stays live on its fixed side: \"house\" puts 12.8 V"
  exposed = parameter.bare
}

conductor "lamp" {
  from = connector.outlet.free
  to   = load.lamp
}

load "lamp" {
  draw = "1 A"
}
