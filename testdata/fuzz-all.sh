#!/usr/bin/env bash
# Runs every fuzz target one after the other, each for a time on so many cores: testdata/fuzz-all.sh 10m 2. A third argument picks targets by their name.
# What is found stays under testdata/fuzz beside its test, to be fixed and committed; new inputs that are only interesting stay in Go's cache. Inputs are made smaller
# in twenty steps at most: big ones would take all the time.
set -uo pipefail
cd "$(dirname "$0")/.."
time=${1:-1m} cores=${2:-2} only=${3:-.}

failed=0
for file in $(grep -rl --include='*_test.go' '^func Fuzz' . | sort); do
	for target in $(sed -n 's/^func \(Fuzz[A-Za-z0-9]*\)(.*/\1/p' "$file" | grep -E "$only"); do
		printf '\n== %s %s\n' "$(dirname "$file")" "$target"
		go test -run '^$' -fuzz "^$target\$" -fuzztime "$time" -fuzzminimizetime 20x -parallel "$cores" "$(dirname "$file")" || failed=1
	done
done
exit $failed
