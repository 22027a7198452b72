# No size on the wire and no rating on a device: neither is fine.

system "unknown" {
}

source "pack" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" { # want not-proven "Whether \"main\" \\(30 A\\) guards \"run\" cannot be told"
  kind   = "anl"
  rating = "30 A"
  on     = source.pack
}

conductor "run" {
  from   = fuse.main.load
  to     = fuse.branch.line
  length = "2 m"
}

fuse "branch" { # want not-proven "The rating of \"branch\" is not written"
  kind = "blade"
}

conductor "end" {
  from   = fuse.branch.load
  to     = load.lamp
  size   = "10 AWG"
  length = "2 m"
}

load "lamp" {
  draw = "1 A"
}
