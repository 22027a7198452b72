# An engine's starter turns for seconds: 200 A are nothing that a 150 A device carries for hours.

system "wigeon" {
}

source "start" {
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

fuse "start" {
  kind   = "anl"
  rating = "150 A"
  on     = source.start
}

conductor "starter" {
  from     = fuse.start.load
  to       = load.starter
  size     = "2/0 AWG"
  length   = "2 m"
  cranking = true
}

load "starter" {
  kind     = "motor"
  draw     = "190 A"
  behavior = "constant-current"
}
