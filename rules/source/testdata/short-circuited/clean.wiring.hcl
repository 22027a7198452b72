# The load stands between the poles.

system "t" {
  practice = ["general"]
}

source "pack" {
  label     = "Pack"
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

load "lamp" {
  draw = "1 A"
}
