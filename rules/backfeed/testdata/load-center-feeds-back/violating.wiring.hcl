# Shore power on and the tow plug mated: the load center charges the truck's battery through the tow
# feed, which is fused at both ends.

system "nuthatch" {
}

source "shore" {
  kind    = "shore"
  voltage = "120 V ac"
  rated   = "30 A"
}

converter "center" { # want caution "With .*\"Tow plug\" mated and \"shore\" present, \"Load center\" charges \"Truck battery\" too, through"
  label = "Load center"
  kind  = "load-center"
  output {
    voltage     = "13.6 V"
    current_max = "20 A"
  }
}

conductor "shore" {
  from   = source.shore
  to     = converter.center.in
  size   = "10 AWG"
  length = "3 m"
}

conductor "charge" {
  from   = converter.center.out
  to     = bus.panel
  size   = "8 AWG"
  length = "1 m"
}

bus "panel" {
}

fuse "house" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.house
}

conductor "house" {
  from   = fuse.house.load
  to     = bus.panel
  size   = "8 AWG"
  length = "1 m"
}

source "house" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

fuse "tow" {
  kind   = "blade"
  rating = "30 A"
  on     = bus.panel
}

conductor "tow" {
  from   = fuse.tow.load
  to     = connector.tow.free
  size   = "8 AWG"
  length = "5 m"
}

connector "tow" {
  label = "Tow plug"
  tow   = true
}

conductor "truck" {
  from   = connector.tow.fixed
  to     = fuse.truck.load
  size   = "8 AWG"
  length = "5 m"
}

fuse "truck" {
  kind   = "blade"
  rating = "30 A"
  on     = source.truck
}

source "truck" {
  label     = "Truck battery"
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "70 Ah"
}
