# A panel whose plus was doubled and whose minus was not. The lamp's own pair has more resistance than the
# single minus, but is as good there as back: it is not what is weak.

system "sorrel" {
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

conductor "feed" {
  from     = fuse.main.load.pos
  to       = bus.panel.pos
  polarity = "positive"
  size     = "8 AWG"
  length   = "3 m"
}

conductor "home" { # want warning "The way back from \"Lamp\" has 52\\.4 mohm, the way there 33\\.4 mohm; it loses up to .* and \"home\" is the weakest part of it"
  from       = fuse.main.load.neg
  to         = bus.panel.neg
  polarity   = "negative"
  size       = "14 AWG"
  insulation = "105 C"
  length     = "3 m"
}

bus "panel" {
}

conductor "lamp" {
  from       = bus.panel
  to         = load.lamp
  size       = "14 AWG"
  insulation = "105 C"
  length     = "3.2 m"
}

load "lamp" {
  label    = "Lamp"
  kind     = "light"
  draw     = "15 A"
  behavior = "constant-current"
}
