# What a diode passes is what feeds it.
system "t" {
}

source "start" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "80 Ah"
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "80 Ah"
}

conductor "a" {
  from = source.start
  to   = converter.box.in
  size = "10 AWG"
}

conductor "b" {
  from = converter.box.out
  to   = source.house
  size = "10 AWG"
}

converter "box" {
  label          = "Box"
  kind           = "diode"

  input {
  }

  output {
  }
}
