package explore_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// TestPlansAgainstViews asks every plan that comes with the project, in every mode, which sources are
// ever joined to each load and whether it can be dark, and compares with the listed networks.
func TestPlansAgainstViews(t *testing.T) {
	plans, asked := 0, 0
	err := filepath.WalkDir("../..", func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".wiring.hcl") {
			return err
		}
		text, err := os.ReadFile(path)
		p, diags := schema.Decode(path, text, nil)
		if err != nil || diags.HasErrors() {
			return err
		}
		n, diags := network.Build(p)
		if diags.HasErrors() {
			return nil
		}
		plans++
		s := explore.New(n, 0)
		for _, f := range filters(s, n.Plan.Modes) {
			for i := range n.Loads {
				asked++
				comparePlan(t, s, f, &n.Loads[i], path)
			}
		}
		return nil
	})
	if err != nil || plans < 100 || asked < plans {
		t.Errorf("%d plans, %d questions: %v", plans, asked, err)
	}
}

func comparePlan(t *testing.T, s *explore.Space, f explore.Filter, l *network.Load, path string) {
	z := s.Net.Together(l.Hot)
	views, complete := s.Views(z, f)
	if !complete {
		return
	}
	dark, joined := explore.No, make([]explore.Truth, len(s.Net.Sources))
	for i := range joined {
		joined[i] = explore.No
	}
	for _, v := range views {
		sameWays(t, s.Net, v, l, path)
		if !v.Live(nil, nil).Feeds(l.Port) {
			dark = explore.Yes
		}
		for i := range joined {
			if v.Across(s.Net.Sources[i].Port, l.Port) {
				joined[i] = explore.Yes
			}
		}
	}
	if a := s.Cut(z, f, l.Port, nil, nil); a.Found != dark || a.View != nil && a.View.Live(nil, nil).Feeds(l.Port) {
		t.Errorf("%s: %s dark: %v, listed %v", path, l.Addr, a.Found, dark)
	}
	for i, want := range joined {
		if a := s.Path(z, f, nil, explore.Poles(s.Net.Sources[i].Port, l.Port)...); a.Found != want {
			t.Errorf("%s: %s joined to %s: %v, listed %v", path, l.Addr, s.Net.Sources[i].Addr, a.Found, want)
		}
	}
}

// sameWays holds the way to each source of a load against that of a walk which looks at everything.
func sameWays(t *testing.T, n *network.Network, v *explore.View, l *network.Load, path string) {
	reach := v.Reach(l.Hot, nil, nil)
	for i := range v.Zone.Sources {
		to := n.Sources[v.Zone.Sources[i]].Hot
		if a, b := v.Between(l.Hot, to), reach.To(to); !slices.Equal(a, b) {
			t.Errorf("%s: the way from %s is %v and %v", path, l.Addr, a, b)
		}
	}
}
