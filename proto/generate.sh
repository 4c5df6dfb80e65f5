#!/bin/sh
# Makes proto/gen again from nothing, with the tools pinned in tools/buf and tools/gen. Needs no network.
set -eu
cd "$(dirname "$0")/.."
buf() { go tool -modfile=tools/buf/go.mod buf "$@"; }

buf format -w proto
buf lint
mkdir -p proto/gen
find proto/gen -name '*.pb.go' -delete
buf generate
