# Each of two converters stays inside the input's current; the two together do not.

system "t" {
}

source "start" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "150 Ah"
}

converter "tracker" { # want warning "up to 20 A with what else feeds it, and the input takes 15 A"
  kind = "mppt"
  input {
    voltage_max = "100 V"
    current_max = "15 A"
  }
  output {
    voltage     = "14.4 V"
    current_max = "15 A"
  }
}

converter "one" {
  kind           = "dc-dc"
  limits_current = true
  trigger        = "ignition"
  output {
    voltage     = "48 V"
    current_max = "10 A"
  }
}

conductor "w1" {
  from   = source.start
  to     = converter.one.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w2" {
  from   = converter.one.out
  to     = converter.tracker.in
  size   = "2 AWG"
  length = "1 m"
}

converter "two" {
  kind           = "dc-dc"
  limits_current = true
  trigger        = "ignition"
  output {
    voltage     = "48 V"
    current_max = "10 A"
  }
}

conductor "w3" {
  from   = source.start
  to     = converter.two.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = converter.two.out
  to     = converter.tracker.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w5" {
  from   = converter.tracker.out
  to     = source.pack
  size   = "2 AWG"
  length = "1 m"
}
