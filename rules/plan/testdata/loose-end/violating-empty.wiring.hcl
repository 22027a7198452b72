# Nothing is drawn yet.

system "t" { # want not-proven warning "The plan draws no source: nothing in it carries current"
  practice = ["general"]
}

bus "panel" {}
