#!/bin/sh
# Contact sheets of drawings and papers, to be looked at after a change of either: `testdata/contact-sheets.sh` in the repository's folder.
# Needs rsvg-convert (librsvg), pdftoppm (poppler) and montage (ImageMagick).
set -eu
export LC_ALL=C
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
go build -trimpath -o "$work/lugwright" ./client/cmd/lugwright

# sheet FILE COLUMNS SIZE FOLDER: all pictures of a folder, in the order of their names, in 16 greys.
sheet() {
	montage -background white -geometry "$3+6+6" -tile "$2x" "$4"/*.png -colorspace Gray -colors 16 -depth 4 -strip -define png:exclude-chunks=date,time "$1"
}

# Each bracket's drawings, left ones of pairs, and its plates. The field lab that was sized by feel is left out: its brackets are the field lab's.
mkdir "$work/drawings"
for job in testdata/jobs/*.yaml; do
	name=$(basename "$job" .yaml)
	[ "$name" = fieldlab-byfeel ] && continue
	"$work/lugwright" pack "$job" -o "$work/$name" >"$work/log" || { cat "$work/log"; exit 1; }
	for svg in "$work/$name"/drawings/brackets/*.svg "$work/$name"/drawings/plates/*.svg; do
		case $(basename "$svg") in *-right-* | *-R[0-9]*) continue ;; esac
		rsvg-convert -w 420 -b white "$svg" -o "$work/drawings/$name-$(basename "$(dirname "$svg")")-$(basename "$svg" .svg).png"
	done
done
sheet client/drawings/testdata/contact-sheet.png 10 300x300 "$work/drawings"

# The field lab's papers, first page and last, the bend card of the trays, an inch weld map, and of the calc sheet the pages of one bracket's drawings.
mkdir "$work/papers"
page() { pdftoppm -r 40 -gray -png -f "$2" -l "$3" "$1" "$work/papers/$4$(basename "$1" .pdf)"; }
last() { pdfinfo "$1" | sed -n 's/^Pages: *//p'; }
for pdf in "$work"/fieldlab/papers/*.pdf "$work/watertrays/papers/bend-card.pdf" "$work/hivecarrier/papers/weld-map.pdf"; do
	job=$(basename "$(dirname "$(dirname "$pdf")")")
	n=$(last "$pdf")
	page "$pdf" 1 1 "$job-"
	[ "$n" -gt 1 ] && page "$pdf" "$n" "$n" "$job-"
done
page "$work/fieldlab/calc-sheet.pdf" 1 8 "fieldlab-"
sheet client/papers/testdata/contact-sheet.png 8 330x "$work/papers"
