system "gull" {
  title = "Two fixed batteries, one of unknown chemistry, on a boost that lets current back"
}
source "house" {
  kind = "battery"
  voltage = "12.8 V"
  capacity = "100 Ah"
}
source "start" {
  kind = "battery"
  chemistry = "flooded"
  voltage = "12 V"
  capacity = "100 Ah"
  role = "starting"
}
converter "boost" { # want not-proven "does harm is not shown: .*`chemistry` of source.house"
  kind = "dc-dc"
  blocks_reverse = false
  limits_current = true
  input {
    voltage_min = "11 V"
  }
  output {
    voltage = "14.4 V"
    current_max = "20 A"
  }
}
fuse "f1" {
  kind = "blade"
  rating = "30 A"
  on = source.start
}
fuse "f2" {
  kind = "blade"
  rating = "30 A"
  on = source.house
}
conductor "in" {
  from = fuse.f1.load
  to = converter.boost.in
  size = "8 AWG"
  length = "3 m"
}
conductor "out" {
  from = converter.boost.out
  to = fuse.f2.load
  size = "8 AWG"
  length = "3 m"
}
