# The same throw, and how the selector makes it is not written. A third battery on a bus of its own does
# not say what it is, nor does its neighbour's voltage.

system "knot" {
}

source "truck" { # want not-proven caution "turns on `transition` of switch.select"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "70 Ah"
}

source "pack" { # want not-proven caution "transition"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

switch "select" {
  terminals = ["common", "truck", "pack"]
  position "truck" {
    joins = [["common", "truck"]]
  }
  position "pack" {
    joins = [["common", "pack"]]
  }
}

conductor "truck" {
  from   = source.truck
  to     = switch.select.truck
  size   = "4 AWG"
  length = "2 m"
}

conductor "pack" {
  from   = source.pack
  to     = switch.select.pack
  size   = "4 AWG"
  length = "1 m"
}

bus "second" {
}

source "mystery" { # want not-proven caution "\"mystery\" and \"known\" are joined. Whether they really meet unlike turns on `chemistry` of source.mystery"
  kind     = "battery"
  voltage  = "12 V"
  capacity = "50 Ah"
}

source "known" { # want not-proven caution "chemistry"
  kind      = "battery"
  chemistry = "gel"
  voltage   = "12 V"
  capacity  = "50 Ah"
}

conductor "mystery" {
  from = source.mystery
  to   = bus.second
}

conductor "known" {
  from = source.known
  to   = bus.second
}
