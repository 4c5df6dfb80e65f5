package command

// This file is the verb shops: shop files to begin with.

import (
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"lugwright/client/shopfile"
	"lugwright/part"
)

func (s *session) shopsVerb() *cli.Command {
	return &cli.Command{
		Name: "shops", ArgsUsage: "[SHOP]", Usage: "list the shipped shop files, or print one to save and change",
		Action: s.shops,
	}
}

func (s *session) shops(c *cli.Context) error {
	if err := arguments(c, 0, 1); err != nil {
		return err
	}
	if name := c.Args().First(); name != "" {
		src, ok := shopfile.Shipped(name)
		if !ok {
			return &usageError{fmt.Sprintf("%q is not a shipped shop%s", name, part.Nearest(name, shopfile.Names())), "shipped are " + strings.Join(shopfile.Names(), ", ")}
		}
		if c.Bool("json") {
			return s.writeJSON(map[string]any{"format": format, "shop": name, "file": string(src)})
		}
		_, err := s.out.Write(src)
		return err
	}
	if c.Bool("json") {
		return s.writeJSON(map[string]any{"format": format, "shops": shopfile.Names()})
	}
	for _, name := range shopfile.Names() {
		s.out.line("%s", name)
	}
	s.out.line("")
	s.out.line("`lugwright shops laser > my-shop.yaml` saves one to change; a job names it: shop: my-shop.yaml")
	return nil
}
