# Three modules in series where four were too many.

system "lapwing" {
  coldest = "-20 C"
}

source "roof" {
  kind            = "solar"
  voc             = "24.3 V"
  voc_coefficient = "-0.29 %/C"
  series          = 3
}

converter "tracker" {
  kind = "mppt"
  input {
    voltage_max = "100 V"
  }
}

conductor "input" {
  from   = source.roof
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "4 m"
}
