system "gull" {
  title = "Two lithium blocks in series across a 24 V alternator"
  practice = ["vehicle"]
}
source "a" { # want danger "\"a\" meets the alternator \"alt\" with nothing between"
  kind = "battery"
  chemistry = "lifepo4"
  voltage = "12.8 V"
  capacity = "100 Ah"
}
source "b" { # want danger "\"b\" meets the alternator \"alt\" with nothing between"
  kind = "battery"
  chemistry = "lifepo4"
  voltage = "12.8 V"
  capacity = "100 Ah"
}
source "alt" {
  kind = "alternator"
  rated = "70 A"
  regulated_voltage = "28.4 V"
}
conductor "mid" {
  from = source.a.neg
  to = source.b.pos
  polarity = "positive"
  size = "2 AWG"
  length = "0.3 m"
}
fuse "f" {
  kind = "class-t"
  rating = "100 A"
  on = source.a.pos
}
conductor "plus" {
  from = fuse.f.load.pos
  to = source.alt.pos
  polarity = "positive"
  size = "2 AWG"
  length = "3 m"
}
conductor "minus" {
  from = source.alt.neg
  to = source.b.neg
  polarity = "negative"
  size = "2 AWG"
  length = "3 m"
}
