# An inverter of 1500 W draws far over 100 A from a low 12 V pack that gives 100 A.

system "t" {
}

source "pack" { # want notice "\"Pack\" is asked for up to [0-9]+ A .\"Inverter\" [0-9]+ A., and gives 100 A"
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
  rated      = "1500 W"
  efficiency = 0.9
}
