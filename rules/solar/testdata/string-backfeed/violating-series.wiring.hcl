# Three strings of two blocks each, every wire drawn on its own.

system "t" {
}

source "a_top" { # want warning "the others drive up to 22.5 A"
  label           = "A_top"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

source "a_low" { # want warning "the others drive up to 22.5 A"
  label           = "A_low"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

conductor "a_mid" {
  from     = source.a_top.neg
  to       = source.a_low.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "3 m"
}

conductor "a_up" {
  from     = source.a_top.pos
  to       = bus.combiner.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "3 m"
}

conductor "a_down" {
  from     = source.a_low.neg
  to       = bus.combiner.neg
  polarity = "negative"
  size     = "6 AWG"
  length   = "3 m"
}

source "b_top" { # want warning "the others drive up to 22.5 A"
  label           = "B_top"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

source "b_low" { # want warning "the others drive up to 22.5 A"
  label           = "B_low"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

conductor "b_mid" {
  from     = source.b_top.neg
  to       = source.b_low.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "3 m"
}

conductor "b_up" {
  from     = source.b_top.pos
  to       = bus.combiner.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "3 m"
}

conductor "b_down" {
  from     = source.b_low.neg
  to       = bus.combiner.neg
  polarity = "negative"
  size     = "6 AWG"
  length   = "3 m"
}

source "c_top" { # want warning "the others drive up to 22.5 A"
  label           = "C_top"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

source "c_low" { # want warning "the others drive up to 22.5 A"
  label           = "C_low"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

conductor "c_mid" {
  from     = source.c_top.neg
  to       = source.c_low.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "3 m"
}

conductor "c_up" {
  from     = source.c_top.pos
  to       = bus.combiner.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "3 m"
}

conductor "c_down" {
  from     = source.c_low.neg
  to       = bus.combiner.neg
  polarity = "negative"
  size     = "6 AWG"
  length   = "3 m"
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
