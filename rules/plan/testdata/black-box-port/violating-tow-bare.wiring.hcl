# A tow plug of which neither side is drawn.

system "bare" {
}

connector "hitch" { # want not-proven "behind the fixed and the free side of the tow plug"
  label = "Hitch plug"
  style = "seven-way"
  tow   = true
}
