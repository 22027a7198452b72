# A keeper gives less than a twentieth of the rating; the other is a fuse; an interlock keeps the spare away.

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

source "roof" {
  label = "Roof"
  kind  = "solar"
  voc   = "24 V"
  isc   = "6 A"
}

converter "tracker" {
  label = "Tracker"
  kind  = "mppt"
  blocks_reverse = true

  output {
    voltage     = "14.4 V"
    current_max = "1.4 A"
  }
}

fuse "out" {
  label     = "Out"
  kind      = "breaker"
  polarized = true
  rating    = "30 A"
}

fuse "fuse" {
  label     = "Fuse"
  kind      = "anl"
  rating    = "30 A"
}

conductor "a" {
  from   = source.pack
  to     = fuse.out.line
  size   = "10 AWG"
  length = "1 m"
}

conductor "b" {
  from   = converter.tracker["out"]
  to     = fuse.out.load
  size   = "10 AWG"
  length = "1 m"
}

conductor "s" {
  from   = source.roof
  to     = converter.tracker["in"]
  size   = "10 AWG"
  length = "1 m"
}

conductor "x" {
  from   = source.pack
  to     = fuse.fuse.line
  size   = "10 AWG"
  length = "1 m"
}

conductor "y" {
  from   = fuse.fuse.load
  to     = fuse.tie.line
  size   = "10 AWG"
  length = "1 m"
}

fuse "tie" {
  label     = "Tie"
  kind      = "breaker"
  polarized = true
  rating    = "30 A"
}

source "spare" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

switch "spare" {
  terminals = ["spare", "lamp"]

  position "off" {
  }

  position "on" {
    joins = [["spare", "lamp"]]
  }
}

interlock "locked" {
  by    = "hardware"
  never = [{ switch.spare = "on" }]
}

conductor "z" {
  from   = fuse.tie.load
  to     = load.lamp
  size   = "10 AWG"
  length = "1 m"
}

conductor "w" {
  from   = source.spare
  to     = switch.spare.spare
  size   = "10 AWG"
  length = "1 m"
}

conductor "v" {
  from   = switch.spare.lamp
  to     = load.lamp
  size   = "10 AWG"
  length = "1 m"
}

load "lamp" {
  draw = "5 A"
}
