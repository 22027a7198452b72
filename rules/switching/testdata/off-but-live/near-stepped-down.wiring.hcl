# A circuit that only a converter feeds: the converter's side of the hand switch is its supply side.

system "t" {
  practice = ["general"]
}

source "bank" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "51.2 V"
}

converter "step" {
  kind           = "dc-dc"
  blocks_reverse = true
  limits_current = true

  output {
    voltage     = "12.5 V"
    current_max = "20 A"
  }
}

conductor "a" {
  from   = source.bank
  to     = converter.step["in"]
  size   = "8 AWG"
  length = "1 m"
}

branch "rooms" {
  from = converter.step["out"]

  fuse {
    kind   = "blade"
    rating = "10 A"
  }

  conductor {
    size   = "14 AWG"
    length = "4 m"
  }

  load "lamp" {
    draw     = "1 A"
    switched = true
  }
}
