# The supply's only fuse is in the negative of its output, and lamp and supply both stand on the body.

system "t" {
  practice = ["general"]
}

source "shore" {
  kind    = "shore"
  voltage = "120 V ac"
}

converter "supply" {
  label    = "Supply"
  kind     = "load-center"
  isolated = true

  output {
    voltage     = "13.6 V"
    current_max = "60 A"
  }
}

conductor "cord" {
  from   = source.shore
  to     = converter.supply.in
  size   = "14 AWG"
  length = "5 m"
}

bus "body" {
  label    = "Body"
  polarity = "chassis"
}

load "lamp" {
  label = "Lamp"
  draw  = "1 A"
}

fuse "main" { # want danger "\"Main\" breaks the negative alone: with it open, \"Lamp\" is still joined to \"Supply\", and current comes home by \"Body\""
  label  = "Main"
  kind   = "anl"
  rating = "60 A"
}

conductor "p" {
  from     = converter.supply.out.pos
  to       = load.lamp.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "n1" {
  from     = converter.supply.out.neg
  to       = fuse.main.line.pos
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "n2" {
  from     = fuse.main.load.pos
  to       = load.lamp.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "g1" {
  from     = converter.supply.out.neg
  to       = bus.body
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "g2" {
  from     = load.lamp.neg
  to       = bus.body
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}
