# 14 AWG at 60 C insulation and 40 C ambient carries 20 x 0.816 = 16.3 A; the heater draws 20 A behind a device
# of 30 A. The second heater's wire is behind 15 A, so its excess is the device's business.

system "teal" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "heater" {
  kind   = "blade"
  rating = "30 A"
  on     = source.house
}

conductor "heater" { # want warning "\"Heater wire\" \\(14 AWG\\) carries up to 20 A, and can carry 16\\.3 A"
  label  = "Heater wire"
  from   = fuse.heater.load
  to     = load.heater
  size   = "14 AWG"
  length = "2 m"
}

load "heater" {
  kind     = "heater"
  draw     = "20 A"
  behavior = "constant-current"
}

fuse "second" {
  kind   = "blade"
  rating = "15 A"
  on     = source.house
}

conductor "second" {
  from   = fuse.second.load
  to     = load.second
  size   = "14 AWG"
  length = "2 m"
}

load "second" {
  kind     = "heater"
  draw     = "20 A"
  behavior = "constant-current"
}
