kit "lights" {
  title = "A fused lighting circuit"
}

parameter "amps" {
  default = "5 A"
}

bus "feed" {
}

conductor "lead" { # want danger "\"lead\" \\(16 AWG, 1.2 m\\) meets source \"Pack\" with no overcurrent device in the first 457.2 mm; the first one on the way is \"main\", 1.6 m off"
  from   = bus.feed
  to     = fuse.main.line
  size   = "16 AWG"
  length = "1.2 m"
}

fuse "main" {
  kind   = "blade"
  rating = parameter.amps
}

conductor "run" {
  from   = fuse.main.load
  to     = load.strip
  size   = "16 AWG"
  length = "2 m"
}

load "strip" {
  draw = "2 A"
}
