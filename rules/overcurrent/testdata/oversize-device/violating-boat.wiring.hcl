# 150 % of the table below 50 V, after heat: a 40 A device is above 37.5 A, and the same wire in an engine space carries less.

system "boat" {
  practice = "us-boat"
}

source "pack" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

bus "posts" {
}

conductor "lead" {
  from       = source.pack
  to         = bus.posts
  size       = "4/0 AWG"
  insulation = "105 C"
  length     = "10 cm"
}

conductor "a_stub" {
  from       = bus.posts
  to         = fuse.above.line
  size       = "6 AWG"
  insulation = "105 C"
  length     = "5 cm"
}

fuse "above" { # want warning "\"above\" \\(40 A\\) guards \"thin\" \\(16 AWG\\), which allows 37.5 A"
  kind   = "anl"
  rating = "40 A"
}

conductor "thin" {
  through    = [compartment.cool]
  from       = fuse.above.load
  to         = load.horn
  size       = "16 AWG"
  insulation = "105 C"
  length     = "1 m"
}

load "horn" {
  draw = "5 A"
}

conductor "b_stub" {
  from       = bus.posts
  to         = fuse.hot.line
  size       = "6 AWG"
  insulation = "105 C"
  length     = "5 cm"
}

fuse "hot" { # want warning "\"hot\" \\(35 A\\) guards \"warm\" .* Without heat and bundling the table would allow 37.5 A"
  kind   = "anl"
  rating = "35 A"
}

conductor "warm" {
  from       = fuse.hot.load
  to         = load.fan
  size       = "16 AWG"
  insulation = "105 C"
  length     = "1 m"
  through    = [compartment.engine]
}

compartment "engine" {
  engine  = true
  ambient = "50 C"
}

load "fan" {
  draw = "5 A"
}

compartment "cool" {
  ambient = "30 C"
}
