# The same pack with a smaller inverter.

system "t" {
}

source "pack" {
  label           = "Pack"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

conductor "feed" {
  from   = source.pack
  to     = converter.inverter.in
  size   = "1/0 AWG"
  length = "1 m"
}

converter "inverter" {
  label      = "Inverter"
  kind       = "inverter"
  rated      = "600 W"
  efficiency = 0.9
}
