#!/bin/sh
# One side of a round neck at several gauges: examples/edges reads a request from every line
# and answers each in a line of its own.
#
#   sh examples/script/edges.sh
#   sh examples/script/edges.sh 18x25 31x44
#
# Gauges are stitches x rows over 10 cm. It needs the go command and nothing else.
set -eu
cd "$(dirname "$0")/../.."
[ $# -gt 0 ] || set -- 20x28 22x30 24x34 28x40

for gauge in "$@"; do
	case $gauge in
	[0-9]*x[0-9]*) ;;
	*)
		echo "edges.sh: $gauge: write stitches x rows over 10 cm, such as 22x30" >&2
		exit 2
		;;
	esac
done
for gauge in "$@"; do
	printf '{"id": "%s", "shape": {"kind": "ellipse", "width": "6 cm", "height": "8 cm"}, ' "$gauge"
	printf '"gauge": {"stitches": "%s", "rows": "%s", "over": "10 cm"}, ' "${gauge%x*}" "${gauge#*x}"
	printf '"rules": {"every": 2, "apart": 2}}\n'
done | go run ./examples/edges -as text
