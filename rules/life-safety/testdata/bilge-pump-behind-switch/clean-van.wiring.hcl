system "t" {
  practice = ["us-rv"]
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    warns_before_cutoff = false
  }
}

conductor "a" {
  from = source.house
  to   = load.lamp
  size = "10 AWG"
}

load "lamp" {
  kind     = "light"
  draw     = "1 A"
  critical = "none"
}
