//go:build !unix

package pack

import "os"

func writeFile(path string, data []byte) error { return os.WriteFile(path, data, 0o666) }
