# The winch runs on the road only, and the heater in camp only; together they never run. In camp it is too much all the same.

system "t" {
}

source "pack" { # want notice "\"Pack\" is asked for up to 110 A .\"heater\" 110 A., and gives 100 A"
  label           = "Pack"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

conductor "winch" {
  from   = source.pack
  to     = load.winch
  size   = "1/0 AWG"
  length = "1 m"
}

load "winch" {
  draw     = "90 A"
  behavior = "constant-current"
  runs_in  = [mode.road]
}

conductor "heater" {
  from   = source.pack
  to     = load.heater
  size   = "1/0 AWG"
  length = "1 m"
}

load "heater" {
  draw     = "110 A"
  behavior = "constant-current"
  runs_in  = [mode.camp]
}

mode "road" {
}

mode "camp" {
}
