# The supply gives 20 A and no more, and no battery is there: a bus that browns out, not a wire that collapses.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "small" {
  label             = "Bench supply"
  kind              = "supply"
  regulated_voltage = "13.8 V"
  rated             = "20 A"
}

conductor "lead" {
  from       = source.small
  to         = converter.boost.in
  size       = "6 AWG"
  length     = "1 m"
  insulation = "105 C"
}

converter "boost" {
  label      = "Boost"
  kind       = "dc-dc"
  rated      = "324 W"
  efficiency = 0.9

  output {
    voltage     = "48 V"
    current_max = "6.75 A"
  }
}
