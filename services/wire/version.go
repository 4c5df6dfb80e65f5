package wire

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"strconv"
	"strings"

	"google.golang.org/protobuf/encoding/protowire"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
)

// APIVersion is the version of the interface, "major.minor". A new major is a release that older clients must refuse.
const APIVersion = "1.0"

// Keys of the header in which every answer of a server states its versions, and every question of a client the first.
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

// Newer says whether an interface has a greater minor version than this one.
func Newer(version string) bool {
	_, mine, _ := strings.Cut(APIVersion, ".")
	_, theirs, ok := strings.Cut(version, ".")
	m, err := strconv.Atoi(mine)
	n, err2 := strconv.Atoi(theirs)
	return ok && err == nil && err2 == nil && n > m
}

// Understood refuses a message of a newer client that has fields unknown here: what they ask for would be left undone without a word.
func Understood(m proto.Message) error {
	var r reader
	r.understood(m.ProtoReflect())
	return r.err()
}

func (r *reader) understood(m protoreflect.Message) {
	if number, _, n := protowire.ConsumeTag(m.GetUnknown()); n > 0 {
		r.refuse("", fmt.Sprintf("field number %d, which interface version %s does not have", number, APIVersion), "fields of "+APIVersion+"; or a service as new as its client")
	}
	fields := m.Descriptor().Fields()
	for i := range fields.Len() {
		switch f := fields.Get(i); {
		case f.Message() == nil || !m.Has(f):
		case f.IsList():
			for k, list := 0, m.Get(f).List(); k < list.Len(); k++ {
				r.enter(string(f.Name()), k)
				r.understood(list.Get(k).Message())
				r.leave()
			}
		default:
			r.enter(string(f.Name()), -1)
			r.understood(m.Get(f).Message())
			r.leave()
		}
	}
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
