# Two lift-out packs, and nothing says which of them the load center is there for; nor what it gives.

system "treecreeper" {
}

converter "center" { # want not-proven "charges \"Left pack\" too, .*Whether it is meant to is not written" not-proven "charges \"Right pack\" too"
  label = "Load center"
  kind  = "load-center"
}

source "left" {
  label     = "Left pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "50 Ah"
  removable = true
}

source "right" {
  label     = "Right pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "50 Ah"
  removable = true
}

conductor "left" { # want not-proven "\"Load center\" feeds \"left\", and that a device before it guards it is not shown"
  from   = converter.center.out
  to     = source.left
  size   = "8 AWG"
  length = "1 m"
}

conductor "right" {
  from   = converter.center.out
  to     = source.right
  size   = "8 AWG"
  length = "1 m"
}
