package wire

import (
	"runtime/debug"
	"strings"
)

// APIVersion is the version of the interface, "major.minor". A new major is a release that older clients must refuse.
const APIVersion = "1.0"

// Keys of the header in which every answer of a server states its versions.
const (
	APIVersionKey  = "lugwright-api-version"
	ToolVersionKey = "lugwright-tool-version"
)

// SameMajor says whether an interface of another version can be spoken to.
func SameMajor(version string) bool {
	mine, _, _ := strings.Cut(APIVersion, ".")
	theirs, _, ok := strings.Cut(version, ".")
	return ok && mine == theirs
}

// ToolVersion is the version of this build: the module's, or the commit it was built from, or "devel".
func ToolVersion() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "devel"
	}
	if v := info.Main.Version; v != "" && v != "(devel)" {
		return v
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" {
			return "devel-" + s.Value[:min(12, len(s.Value))]
		}
	}
	return "devel"
}
