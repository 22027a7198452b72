# A hard one: the load that draws most starts gently; the other of the selector draws less, and starts with sixty amps.

system "dunlin" {
  practice = ["us-rv"]
  ambient = "30 C"
}

source "pack" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "200 Ah"
}

fuse "f" { # want notice `"f" \(20 A\) opens within 12 s at 60 A, and "b" takes 20 s to start\.`
  rating = "20 A"
  kind = "blade"
  voltage_rating = "32 V dc"
  interrupting = "10 kA"
  on = source.pack
}

conductor "w" {
  from = fuse.f.load
  to = switch.s.c
  size = "8 AWG"
  length = "1 m"
  insulation = "105 C"
}

switch "s" {
  terminals = ["c", "a", "b"]
  transition = "break-before-make"
  position "p0" {
    joins = [["c", "a"]]
  }
  position "p1" {
    joins = [["c", "b"]]
  }
}

conductor "wa" {
  from = switch.s.a
  to = load.a
  size = "8 AWG"
  length = "1 m"
}

conductor "wb" {
  from = switch.s.b
  to = load.b
  size = "8 AWG"
  length = "1 m"
}

load "a" {
  draw = "13 A"
}

load "b" {
  draw = "8 A"
  surge = "60 A"
  surge_time = "20 s"
}
