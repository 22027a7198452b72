# The converter that the selector is fed by also stands on the house side.

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

source "post" {
  label   = "Post"
  kind    = "shore"
  voltage = "120 V ac"
  rated   = "30 A"
}

converter "charger" {
  label = "Supply box"
  kind  = "charger"

  output {
    voltage     = "13.6 V"
    current_max = "30 A"
  }
}

switch "choose" { # want caution "its terminal .* is still live: \"Supply box\" feeds it"
  label      = "Chooser"
  transition = "break-before-make"
  terminals  = ["pack", "box", "house"]

  position "pack" {
    joins = [["pack", "house"]]
  }

  position "off" {}

  position "box" {
    joins = [["box", "house"]]
  }
}

load "lamp" {
  label = "Lamp"
  draw  = "1 A"
}

conductor "a" {
  from   = source.post
  to     = converter.charger.in
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "p" {
  from   = source.pack
  to     = switch.choose.pack
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "b" {
  from   = converter.charger.out
  to     = switch.choose.box
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "h" {
  from   = switch.choose.house
  to     = load.lamp
  size   = "2 AWG"
  length = "0.5 m"
}

conductor "around" {
  from   = converter.charger.out
  to     = load.lamp
  size   = "2 AWG"
  length = "0.5 m"
}
