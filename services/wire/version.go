package wire

import (
	"runtime"
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

// Build is what a binary knows of how it was made.
type Build struct {
	Go       string // version of Go
	Revision string // of the source; empty when it was not recorded
	Modified bool   // the source was changed beside that revision
}

// ThisBuild is the build of this binary.
func ThisBuild() Build {
	b := Build{Go: runtime.Version()}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return b
	}
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			b.Revision = s.Value
		case "vcs.modified":
			b.Modified = s.Value == "true"
		}
	}
	return b
}

// ToolVersion is the version of this build: the module's, or the commit it was built from, or "devel".
func ToolVersion() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		return info.Main.Version
	}
	if revision := ThisBuild().Revision; revision != "" {
		return "devel-" + revision[:min(12, len(revision))]
	}
	return "devel"
}
