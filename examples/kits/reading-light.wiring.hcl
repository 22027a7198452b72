# A reading light with a fuse of its own, for a bunk or a bench. Used twice in a plan or more.
kit "reading-light" {
  title = "Fused reading light on a bus"
}

parameter "feed" {
  notes = "The bus that its fuse sits on."
}

parameter "main" {
  notes = "The device ahead of that bus, with which its fuse is series rated."
}

parameter "fuse_label" {
  notes = "What the fuse panel says."
}

parameter "length" {
  notes = "One way, from the panel to the lamp."
}

parameter "draw" {
  default = "0.5 A"
  notes   = "Of one lamp."
}

fuse "light" {
  label             = parameter.fuse_label
  kind              = "blade"
  rating            = "3 A"
  voltage_rating    = "32 V dc"
  interrupting      = "1 kA"
  series_rated_with = parameter.main
  on                = parameter.feed
}

conductor "lead" {
  from       = fuse.light.load
  to         = switch.lamp.feed
  size       = "16 AWG"
  length     = parameter.length
  insulation = "105 C"
  bundle     = 4
}

switch "lamp" {
  label          = "Reading light switch"
  terminals      = ["feed", "lamp"]
  rating         = "6 A"
  voltage_rating = "32 V dc"
  poles          = 1

  position "off" {}
  position "on" { joins = [["feed", "lamp"]] }
}

conductor "tail" {
  from       = switch.lamp.lamp
  to         = load.lamp
  size       = "16 AWG"
  length     = "0.2 m"
  insulation = "105 C"
  bundle     = 4
}

load "lamp" {
  label = "Reading light"
  kind  = "light"
  draw  = parameter.draw

  voltage_min = "10 V"
  voltage_max = "16 V"
  critical    = "none"
}
