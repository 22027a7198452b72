package rules

import "testing"

// No switch position warns of it: the state is the failed part alone.
func TestHiddenShort(t *testing.T) {
	h := hiddenState{"3_10", "converter/shorts-through", "converter.step", "after=converter.step: shorts through"}
	if n := h.found(t, "flawed"); n != 1 {
		t.Errorf("%s flawed: %s of %s is violated %d times with %s", h.plan, h.rule, h.subject, n, h.state)
	}
	h.clean(t)
}
