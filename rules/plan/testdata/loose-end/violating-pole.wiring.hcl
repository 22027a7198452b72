# Only the positive is drawn; and the converter charges nothing.

system "t" {
  practice = ["general"]
}

source "pack" { # want not-proven warning "No return is drawn for the terminals of \"Pack\""
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

conductor "a" {
  polarity = "positive"
  from     = source.pack
  to       = converter.step["in"]
  size     = "8 AWG"
  length   = "1 m"
}

converter "step" { # want not-proven warning "Nothing is wired to the output of \"step\"|No return is drawn for the input of \"step\""
  kind = "dc-dc"
}
