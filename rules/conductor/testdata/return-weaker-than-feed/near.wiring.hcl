# A pair that is too thin on both sides is another rule's, its plus carrying as much. A way back three times as long
# loses 20 mV of 12 V. The starter's strap says what it is. A minus thinner than its plus, behind a device that keeps
# both within it. A pair of which neither size nor length is written. A minus of 1.4 times the resistance of its plus.

system "teal" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "thin" {
  kind   = "terminal"
  rating = "40 A"
  on     = source.house
}

conductor "thin" {
  from   = fuse.thin.load
  to     = load.thin
  size   = "12 AWG"
  length = "1 m"
}

load "thin" {
  draw     = "30 A"
  behavior = "constant-current"
}

fuse "lamp" {
  kind   = "cartridge"
  rating = "2 A"
  on     = source.house
}

conductor "lamp_plus" {
  from     = fuse.lamp.load.pos
  to       = load.lamp.pos
  polarity = "positive"
  size     = "16 AWG"
  length   = "1 m"
}

conductor "lamp_minus" {
  from     = load.lamp.neg
  to       = source.house.neg
  polarity = "negative"
  size     = "16 AWG"
  length   = "3 m"
}

load "lamp" {
  draw     = "0.4 A"
  behavior = "constant-current"
}

conductor "crank" {
  from     = source.house.pos
  to       = load.starter.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "0.5 m"
  cranking = true
}

conductor "strap" {
  from     = load.starter.neg
  to       = source.house.neg
  polarity = "negative"
  size     = "6 AWG"
  length   = "0.5 m"
  cranking = true
}

load "starter" {
  kind     = "motor"
  draw     = "150 A"
  behavior = "constant-current"
}

fuse "guarded" {
  kind   = "blade"
  rating = "15 A"
  on     = source.house
}

conductor "guarded_plus" {
  from     = fuse.guarded.load.pos
  to       = load.guarded.pos
  polarity = "positive"
  size     = "12 AWG"
  length   = "0.3 m"
}

conductor "guarded_minus" {
  from     = load.guarded.neg
  to       = source.house.neg
  polarity = "negative"
  size     = "14 AWG"
  length   = "0.3 m"
}

load "guarded" {
  draw     = "20 A"
  behavior = "constant-current"
}

fuse "unsaid" {
  kind   = "blade"
  rating = "5 A"
  on     = source.house
}

conductor "unsaid" {
  from = fuse.unsaid.load
  to   = load.unsaid
}

load "unsaid" {
}

fuse "fan" {
  kind   = "blade"
  rating = "10 A"
  on     = source.house
}

conductor "fan_plus" {
  from     = fuse.fan.load.pos
  to       = load.fan.pos
  polarity = "positive"
  size     = "14 AWG"
  length   = "5 m"
}

conductor "fan_minus" {
  from     = load.fan.neg
  to       = source.house.neg
  polarity = "negative"
  size     = "14 AWG"
  length   = "7 m"
}

load "fan" {
  draw     = "8 A"
  behavior = "constant-current"
}
