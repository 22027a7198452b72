# With the battery off the converter cannot hold up both loads: what they would draw at the volts that are left is drawn by
# neither.

system "dunlin" {
  practice = ["general"]
}

source "house" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "100 Ah"
  short_circuit = "2 kA"
}

source "shore" {
  kind = "shore"
  voltage = "120 V ac"
  rated = "30 A"
  short_circuit = "2 kA"
}

converter "cv" {
  kind = "load-center"
  blocks_reverse = true
  limits_current = true
  input {
    voltage_min = "100 V ac"
    voltage_max = "135 V ac"
    current_max = "20 A"
  }
  output {
    voltage = "13.8 V"
    current_max = "15 A"
  }
}

conductor "s" {
  from = source.shore
  to = converter.cv.in
  size = "10 AWG"
  length = "1 m"
}

conductor "o" {
  from = converter.cv.out
  to = bus.m
  size = "6 AWG"
  length = "1 m"
}

fuse "f" {
  kind = "class-t"
  rating = "60 A"
  voltage_rating = "58 V dc"
  interrupting = "20 kA"
  on = source.house
}

switch "d" {
  terminals = ["i", "o"]
  kind = "disconnect"
  rating = "100 A"
  voltage_rating = "58 V dc"
  position "off" {
  }
  position "on" {
    joins = [["i", "o"]]
  }
}

conductor "m1" {
  from = fuse.f.load
  to = switch.d.i
  size = "6 AWG"
  length = "1 m"
}

conductor "m2" {
  from = switch.d.o
  to = bus.m
  size = "6 AWG"
  length = "1 m"
}

bus "m" {
}

fuse "fb" {
  kind = "blade"
  rating = "15 A"
  voltage_rating = "58 V dc"
  interrupting = "2 kA"
  on = bus.m
}

conductor "wb" {
  from = fuse.fb.load
  to = load.b
  size = "12 AWG"
  length = "1 m"
}

load "b" {
  kind = "electronics"
  power = "60 W"
  behavior = "constant-power"
}

fuse "fa" {
  kind = "blade"
  rating = "40 A"
  voltage_rating = "58 V dc"
  interrupting = "2 kA"
  on = bus.m
}

conductor "wa" {
  from = fuse.fa.load
  to = load.a
  size = "8 AWG"
  length = "1 m"
}

load "a" {
  kind = "light"
  draw = "23 A"
  behavior = "constant-current"
}
