# The first device stands 2.4 m from the pack. It matters in one position of the selector only, since
# the pack's own feed ends there in the others.

system "tern" {
  practice = ["us-boat"]
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "aux" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "60 Ah"
}

fuse "aux_main" {
  kind   = "terminal"
  rating = "50 A"
  on     = source.aux
}

switch "house_select" {
  terminals  = ["pack", "aux", "house"]
  transition = "break-before-make"
  position "pack" {
    joins = [["pack", "house"]]
  }
  position "off" {
  }
  position "aux" {
    joins = [["aux", "house"]]
  }
}

conductor "pack_feed" { # want danger "^\"Pack feed\" \\(8 AWG, 2.1 m\\) meets source \"Pack\" with no overcurrent device in the first 177.8 mm; the first one on the way is \"Main\", 2.4 m off\\.$"
  label  = "Pack feed"
  from   = source.pack
  to     = switch.house_select.pack
  size   = "8 AWG"
  length = "2.1 m"
}

conductor "aux_feed" {
  from   = fuse.aux_main.load
  to     = switch.house_select.aux
  size   = "8 AWG"
  length = "1.8 m"
}

conductor "select_to_main" { # want danger "\"select_to_main\" .* the first one on the way is \"Main\", 2.4 m off"
  from   = switch.house_select.house
  to     = fuse.main.line
  size   = "8 AWG"
  length = "0.3 m"
}

fuse "main" {
  label  = "Main"
  kind   = "anl"
  rating = "50 A"
}

load "lights" {
  draw = "5 A"
}

conductor "lights" {
  from   = fuse.main.load
  to     = load.lights
  size   = "8 AWG"
  length = "3 m"
}
