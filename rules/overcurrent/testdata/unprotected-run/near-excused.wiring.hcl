# The long wire meets the pack in no state that the plan allows, and a memory cell gives less than its
# wire carries, by the maker's figure.

system "excused" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  removable = true
}

conductor "post" {
  from   = source.pack
  to     = switch.link.pack
  size   = "6 AWG"
  length = "20 cm"
}

switch "link" {
  terminals  = ["pack", "far", "near"]
  transition = "break-before-make"
  position "near" {
    joins = [["pack", "near"]]
  }
  position "far" {
    joins = [["far", "near"]]
  }
  position "cross" {
    joins = [["pack", "far"]]
  }
}

interlock "never_cross" {
  never = [{ switch.link = "cross", source.pack = "present" }]
  by    = "hardware"
}

conductor "long" {
  from   = switch.link.far
  to     = load.far
  size   = "14 AWG"
  length = "6 m"
}

load "far" {
  draw = "3 A"
}

fuse "near" {
  kind   = "anl"
  rating = "50 A"
}

conductor "near" {
  from   = switch.link.near
  to     = fuse.near.line
  size   = "6 AWG"
  length = "10 cm"
}

conductor "near_load" {
  from   = fuse.near.load
  to     = load.far
  size   = "8 AWG"
  length = "1 m"
}

source "memory" {
  kind       = "battery"
  chemistry  = "li-ion"
  voltage    = "3.7 V"
  capacity   = "2 Ah"
  resistance = "400 mohm"
}

conductor "memory" {
  from       = source.memory
  to         = load.memory
  size       = "16 AWG"
  insulation = "105 C"
  length     = "2 m"
}

load "memory" {
  draw          = "0.1 A"
  rated_voltage = "3.7 V"
}
