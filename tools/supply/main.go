// Command supply writes what goes with the programs: the licences of all that is linked into them, and a bill of materials of one of them. It never downloads; what it
// reads is in the module cache once the programs have been built.
//
//	go run -C tools/supply . licences ../..                    docs/licences.md of the module there
//	go run -C tools/supply . sbom ../.. lugwright > bom.json   CycloneDX, from what the linker wrote into the program
package main

import (
	"fmt"
	"os"
	"path/filepath"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "supply:", err)
		os.Exit(2)
	}
}

func run(args []string) error {
	switch {
	case len(args) == 2 && args[0] == "licences":
		list, err := modules(args[1])
		if err != nil {
			return err
		}
		page, err := page(list)
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(args[1], "docs", "licences.md"), page, 0o644)
	case len(args) == 3 && args[0] == "sbom":
		return sbom(os.Stdout, args[1], args[2])
	}
	return fmt.Errorf("usage: supply licences MODULE, or supply sbom MODULE PROGRAM")
}
