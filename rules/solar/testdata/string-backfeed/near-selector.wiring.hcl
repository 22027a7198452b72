# Three strings that a selector takes two at a time; an interlock keeps the third off.

system "t" {
}

source "a" {
  label           = "A"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "12 A"
}

conductor "a" {
  from   = source.a
  to     = switch.a.array
  size   = "6 AWG"
  length = "3 m"
}

switch "a" {
  terminals = ["array", "down"]
  poles     = 2

  position "off" {}
  position "on" { joins = [["array", "down"]] }
}

conductor "a2" {
  from   = switch.a.down
  to     = bus.combiner
  size   = "6 AWG"
  length = "3 m"
}

source "b" {
  label           = "B"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "12 A"
}

conductor "b" {
  from   = source.b
  to     = switch.b.array
  size   = "6 AWG"
  length = "3 m"
}

switch "b" {
  terminals = ["array", "down"]
  poles     = 2

  position "off" {}
  position "on" { joins = [["array", "down"]] }
}

conductor "b2" {
  from   = switch.b.down
  to     = bus.combiner
  size   = "6 AWG"
  length = "3 m"
}

source "c" {
  label           = "C"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "12 A"
}

conductor "c" {
  from   = source.c
  to     = switch.c.array
  size   = "6 AWG"
  length = "3 m"
}

switch "c" {
  terminals = ["array", "down"]
  poles     = 2

  position "off" {}
  position "on" { joins = [["array", "down"]] }
}

conductor "c2" {
  from   = switch.c.down
  to     = bus.combiner
  size   = "6 AWG"
  length = "3 m"
}

bus "combiner" {
}

conductor "down" {
  from   = bus.combiner
  to     = converter.tracker.in
  size   = "6 AWG"
  length = "3 m"
}

converter "tracker" {
  label          = "Tracker"
  kind           = "mppt"
  limits_current = true
  blocks_reverse = true

  output {
    voltage     = "14.2 V"
    current_max = "30 A"
  }
}

interlock "two_of_three" {
  never = [{ switch.a = "on", switch.b = "on", switch.c = "on" }]
  by    = "hardware"
}
