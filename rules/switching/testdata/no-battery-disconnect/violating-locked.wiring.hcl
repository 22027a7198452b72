# The selector has an off, and an interlock keeps it from being used while the pack is there; its
# other position feeds the lamp through the second contact.

system "t" {
  practice = ["general"]
}

source "pack" { # want caution "takes \"Pack\" off \"Lamp\""
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
  removable = true
}

switch "select" {
  terminals = ["pack", "x", "y"]

  position "off" {
  }

  position "x" {
    joins = [["pack", "x"]]
  }

  position "y" {
    joins = [["pack", "y"]]
  }
}

interlock "never_off" {
  by = "hardware"

  never = [{ switch.select = "off", source.pack = "present" }]
}

conductor "a" {
  from = source.pack
  to   = switch.select.pack
}

conductor "b" {
  from = switch.select.x
  to   = load.lamp
}

conductor "c" {
  from = load.lamp
  to   = switch.select.y
}

load "lamp" {
  label = "Lamp"
  draw  = "1 A"
}
