# What is not written is asked for: how cold it gets, and what the controller takes. Where the
# voltage at 25 C is already too high, no cold is needed.

system "ruff" {
}

source "roof" {
  kind   = "solar"
  voc    = "40 V"
  series = 2
}

converter "small" { # want warning "\"roof\" reaches 80 V"
  kind = "mppt"
  input {
    voltage_max = "75 V"
  }
}

converter "large" { # want not-proven "How high \"roof\" goes"
  kind = "mppt"
  input {
    voltage_max = "100 V"
  }
}

converter "unmarked" { # want not-proven "How high \"roof\" goes"
  kind = "mppt"
}

conductor "a" {
  from   = source.roof
  to     = converter.small.in
  size   = "10 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.roof
  to     = converter.large.in
  size   = "10 AWG"
  length = "1 m"
}

conductor "c" {
  from   = source.roof
  to     = converter.unmarked.in
  size   = "10 AWG"
  length = "1 m"
}
