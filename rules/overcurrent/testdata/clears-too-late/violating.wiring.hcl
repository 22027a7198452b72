# The boat practice allows 15 A on 18 AWG with 60 C insulation. 12 m away a short draws 18.2 A of an empty battery with 30 mohm: the
# device may carry that for good. At 9 m it opens, but later than the wire withstands; at 6 m in time.

system "boat" {
  practice = "us-boat"
  ambient  = "30 C"
}

source "b" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  resistance = "30 mohm"
}

fuse "far" {
  kind   = "blade"
  rating = "15 A"
  on     = source.b
}

conductor "far" { # want warning "A short at the far end of \"far\" \\(18 AWG, 12 m\\) draws 18.2 A through it, on which \"far\" \\(15 A\\) may stay closed for good; the wire withstands that for 27.1 s"
  from   = fuse.far.load
  to     = load.far
  size   = "18 AWG"
  length = "12 m"
}

load "far" {
  draw = "1 A"
}

fuse "mid" {
  kind   = "blade"
  rating = "15 A"
  on     = source.b
}

conductor "mid" { # want warning "A short at the far end of \"mid\" \\(18 AWG, 9 m\\) draws 23.8 A through it; \"mid\" \\(15 A\\) takes up to 82.3 s to open, and the wire withstands that for 15.8 s"
  from   = fuse.mid.load
  to     = load.mid
  size   = "18 AWG"
  length = "9 m"
}

load "mid" {
  draw = "1 A"
}

fuse "near" {
  kind   = "blade"
  rating = "15 A"
  on     = source.b
}

conductor "near" {
  from   = fuse.near.load
  to     = load.near
  size   = "18 AWG"
  length = "6 m"
}

load "near" {
  draw = "1 A"
}
