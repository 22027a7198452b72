system "t" {
}

connector "tow" { # want not-proven notice "Nothing is drawn behind the fixed side of the tow plug \"Tow plug\""
  label = "Tow plug"
  style = "seven pins"
  tow   = true
}

load "lamp" {
  kind = "light"
  draw = "1 A"
}

conductor "a" {
  from = connector.tow.free
  to   = load.lamp
  size = "10 AWG"
}
