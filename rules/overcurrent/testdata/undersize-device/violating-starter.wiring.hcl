# The same starter behind a device that is open before the engine runs.

system "wigeon" {
}

source "start" {
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

fuse "start" { # want notice "\"start\" .30 A. carries 190 A for longer than the .* after which it opens"
  kind   = "blade"
  rating = "30 A"
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
