# Lead-acid within 1 C; two strings of it give twice as much.

system "t" {
}

source "house" {
  label           = "House"
  kind            = "battery"
  chemistry       = "agm"
  voltage         = "12 V"
  capacity        = "80 Ah"
}

conductor "feed" {
  from   = source.house
  to     = load.winch
  size   = "1/0 AWG"
  length = "1 m"
}

load "winch" {
  draw     = "79 A"
  behavior = "constant-current"
}

source "bank" {
  label           = "Bank"
  kind            = "battery"
  chemistry       = "flooded"
  voltage         = "12 V"
  capacity        = "80 Ah"
  parallel        = 2
}

conductor "feed2" {
  from   = source.bank
  to     = load.winch2
  size   = "1/0 AWG"
  length = "1 m"
}

load "winch2" {
  draw     = "150 A"
  behavior = "constant-current"
}
