# The main fuse sits on nothing: one forgotten line.

system "t" {
  practice = ["general"]
}

source "pack" { # want not-proven warning "Nothing is wired to the terminals of \"Pack\""
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "main" { # want not-proven warning "Nothing is wired to the line of \"Main\""
  label  = "Main"
  kind   = "class-t"
  rating = "30 A"
}

conductor "a" {
  from   = fuse.main.load
  to     = load.lamp
  size   = "8 AWG"
  length = "1 m"
}

load "lamp" { # want not-proven warning "No source can reach \"lamp\""
  draw = "1 A"
}
