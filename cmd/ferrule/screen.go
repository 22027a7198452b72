package main

import (
	"io"
	"os"

	xterm "golang.org/x/term"

	"ferrule/lint/report"
)

// Columns of text where the terminal does not say, and at most.
const (
	usualWidth = 80
	mostWidth  = 100
)

// style asks the output what it can do. colour is auto, always or never.
func style(out io.Writer, colour string) report.Style {
	s := report.Style{Width: usualWidth, Colour: colour == "always"}
	f, ok := out.(*os.File)
	if !ok || !xterm.IsTerminal(int(f.Fd())) {
		return s
	}
	s.Terminal = true
	if w, _, err := xterm.GetSize(int(f.Fd())); err == nil && w > 0 {
		s.Width = min(w, mostWidth)
	}
	if colour == "auto" {
		s.Colour = os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
	}
	return s
}
