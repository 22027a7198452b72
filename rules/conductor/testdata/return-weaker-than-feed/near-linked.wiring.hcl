# A boat whose two batteries are tied by a pair through a combiner and by a negative link: with the link
# open the tie's return carries what its plus does, and no more.

system "samphire" {
  practice = ["us-boat"]
}

source "start" {
  kind      = "battery"
  role      = "starting"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

source "house" {
  kind            = "battery"
  role            = "house"
  chemistry       = "agm"
  voltage         = "12 V"
  capacity        = "200 Ah"
  discharge_limit = "200 A"
}

conductor "starter" {
  from       = source.start
  to         = load.starter
  size       = "2/0 AWG"
  length     = "2 m"
  insulation = "105 C"
  cranking   = true
}

load "starter" {
  kind     = "motor"
  draw     = "200 A"
  behavior = "constant-current"
}

fuse "tie" {
  kind   = "cartridge"
  rating = "100 A"
  on     = source.house
}

switch "combiner" {
  kind      = "isolator"
  terminals = ["a", "b"]
  rating    = "300 A"
  cut_in    = "13.3 V"
  cut_out   = "12.8 V"
  position "open" {}
  position "closed" { joins = [["a", "b"]] }
}

conductor "tie_a" {
  from       = source.start
  to         = switch.combiner.a
  size       = "4 AWG"
  length     = "1 m"
  insulation = "105 C"
}

conductor "tie_b" {
  from       = switch.combiner.b
  to         = fuse.tie.load
  size       = "4 AWG"
  length     = "1 m"
  insulation = "105 C"
}

conductor "link" {
  from       = source.start.neg
  to         = source.house.neg
  polarity   = "negative"
  size       = "1/0 AWG"
  length     = "1 m"
  insulation = "105 C"
}

conductor "heater" {
  from       = source.house
  to         = load.heater
  size       = "2/0 AWG"
  length     = "1 m"
  insulation = "105 C"
}

load "heater" {
  kind     = "heater"
  draw     = "150 A"
  behavior = "constant-current"
}
