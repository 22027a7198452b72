package main

import (
	"bytes"
	"strings"

	"github.com/spf13/cobra"

	"ferrule/lint/network"
	"ferrule/lint/report"
	"ferrule/lint/term"
)

func (c *cli) wiresCommand() *cobra.Command {
	var r reading
	cmd := &cobra.Command{
		Use: "wires PLAN", Short: "Prints the two-wire network of a plan",
		Long:    "Wires prints the network that the rules see: nodes, what joins them in which positions, ports, and zones.",
		Example: "  ferrule wires camper.wiring.hcl",
		Args:    exactly(1, "one plan"),
		RunE:    func(_ *cobra.Command, args []string) error { return c.wires(&r, args[0]) },
	}
	cmd.Flags().StringArrayVar(&r.kits, "kits", nil, "a further `folder` in which kits may lie; may be given again")
	return cmd
}

func (c *cli) wires(r *reading, path string) error {
	reader, err := c.reader(r, []string{path})
	if err != nil {
		return err
	}
	run := &report.Run{Version: version()}
	plan, diags, _ := reader.Load(path)
	if run.Errors = diags; len(diags) == 0 {
		var b bytes.Buffer
		net, more := network.Build(plan)
		net.Print(&b)
		for line := range strings.Lines(b.String()) {
			if _, err := c.out.Write([]byte(term.Clean(strings.TrimRight(line, "\n")) + "\n")); err != nil {
				return err
			}
		}
		run.Errors = withPlace(more, path)
	}
	if len(run.Errors) == 0 {
		return nil
	}
	c.status = exitUnread
	return report.Text(c.out, run, style(c.out, "auto"))
}
