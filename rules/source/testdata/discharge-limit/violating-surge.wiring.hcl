# A compressor starts at 150 A. One pack says what it gives for seconds, one says where its cut-off
# opens, one says neither.

system "t" {
}

source "a" { # want notice "\"Stated\" is asked for up to 150 A while \"compressor_a\" starts .*, and gives 120 A"
  label           = "Stated"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
  surge_limit     = "120 A"
}

source "b" { # want notice "up to 150 A while \"compressor_b\" starts .*, and its own cut-off opens at 130 A"
  label           = "Cut off"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"

  bms {
    opens_above = "130 A"
  }
}

source "c" { # want not-proven "\"Silent\" is asked for up to 150 A while \"compressor_c\" starts, more than the 100 A it gives for long"
  label           = "Silent"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

conductor "a" {
  from   = source.a
  to     = load.compressor_a
  size   = "1/0 AWG"
  length = "1 m"
}

load "compressor_a" {
  draw     = "30 A"
  behavior = "constant-current"
  surge    = "150 A"
}

conductor "b" {
  from   = source.b
  to     = load.compressor_b
  size   = "1/0 AWG"
  length = "1 m"
}

load "compressor_b" {
  draw     = "30 A"
  behavior = "constant-current"
  surge    = "150 A"
}

conductor "c" {
  from   = source.c
  to     = load.compressor_c
  size   = "1/0 AWG"
  length = "1 m"
}

load "compressor_c" {
  draw     = "30 A"
  behavior = "constant-current"
  surge    = "150 A"
}
