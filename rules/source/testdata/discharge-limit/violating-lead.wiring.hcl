# Lead-acid without a figure gives its capacity in one hour; a starter beside it draws for seconds only.

system "t" {
}

source "house" { # want notice "\"House\" is asked for up to 90 A .*, and gives 80 A"
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
  draw     = "90 A"
  behavior = "constant-current"
}

conductor "crank" {
  from   = source.house
  to     = load.starter
  size   = "1/0 AWG"
  length = "1 m"
  cranking = true
}

load "starter" {
  draw     = "300 A"
  behavior = "constant-current"
  kind     = "motor"
}
