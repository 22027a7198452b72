# Exactly 80 % for hours; a jack above its device's rating that is done before the device opens; and a start that is over
# in a tenth of a second while another load's longer start is small.

system "near" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12 V"
  capacity  = "300 Ah"
}

fuse "main" {
  kind   = "class-t"
  rating = "300 A"
  on     = source.pack
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "4/0 AWG"
  length = "2 m"
}

bus "panel" {
}

branch "fridge" {
  from = bus.panel
  fuse {
    kind   = "blade"
    rating = "10 A"
  }
  conductor {
    size   = "12 AWG"
    length = "3 m"
  }
  load "fridge" {
    behavior = "constant-current"
    draw     = "8 A"
  }
}

branch "jack" {
  from = bus.panel
  fuse {
    kind   = "blade"
    rating = "30 A"
  }
  conductor {
    size   = "10 AWG"
    length = "3 m"
  }
  load "jack" {
    behavior      = "constant-current"
    draw          = "42 A"
    hours_per_day = "30 s"
  }
}

conductor "motors" {
  from   = bus.panel
  to     = fuse.motors.line
  size   = "8 AWG"
  length = "10 cm"
}

fuse "motors" {
  kind   = "blade"
  rating = "30 A"
  curve  = [["60 A", "10 s"], ["200 A", "0.5 s"]]
}

conductor "sharp" {
  from   = fuse.motors.load
  to     = load.sharp
  size   = "8 AWG"
  length = "2 m"
}

load "sharp" {
  behavior   = "constant-current"
  draw       = "5 A"
  surge      = "150 A"
  surge_time = "0.1 s"
}

conductor "slow" {
  from   = fuse.motors.load
  to     = load.slow
  size   = "8 AWG"
  length = "2 m"
}

load "slow" {
  behavior   = "constant-current"
  draw       = "5 A"
  surge      = "12 A"
  surge_time = "20 s"
}
