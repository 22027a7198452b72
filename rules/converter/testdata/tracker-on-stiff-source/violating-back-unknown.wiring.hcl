# Whether the second converter lets the battery back is not written.

system "t" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "150 Ah"
}

converter "other" {
  kind = "dc-dc"
  output {
    voltage     = "14.4 V"
    current_max = "10 A"
  }
}

converter "tracker" { # want not-proven "backwards through \"other\".* Whether that can be turns on `blocks_reverse` of converter.other"
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

source "array" {
  kind = "solar"
  voc  = "40 V"
  isc  = "8 A"
  vmp  = "33 V"
  imp  = "7.5 A"
}

conductor "w1" {
  from   = source.array
  to     = converter.tracker.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w2" {
  from   = source.array
  to     = converter.other.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = converter.other.out
  to     = source.pack
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = converter.tracker.out
  to     = source.pack
  size   = "2 AWG"
  length = "1 m"
}
