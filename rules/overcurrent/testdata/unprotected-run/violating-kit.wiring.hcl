# The wire without a device is inside a kit; the pack stands outside it, behind a momentary switch.

system "kits" {
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "20 Ah"
}

switch "press" {
  terminals = ["feed", "kit"]
  momentary = true
}

conductor "short" {
  from   = source.pack
  to     = switch.press.feed
  size   = "12 AWG"
  length = "30 cm"
}

conductor "into_kit" {
  from   = switch.press.kit
  to     = use.rear.bus.feed
  size   = "12 AWG"
  length = "10 cm"
}

use "rear" {
  kit  = "./lights.wiring.hcl"
  amps = "3 A"
}
