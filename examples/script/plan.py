#!/usr/bin/env python3
"""Account for the stitches of each panel of a front, from its plan document.

    python3 examples/script/plan.py
    python3 examples/script/plan.py my.json

The plan comes from examples/frontpiece, which plans its demo unless a spec is named. It
needs the go command and Python's standard library.
"""

import json
import pathlib
import subprocess
import sys

TOP = pathlib.Path(__file__).resolve().parents[2]


def usage(args):
    if len(args) > 1 or any(arg.startswith("-") for arg in args):
        sys.exit(__doc__.strip())


def plan(spec=None):
    command = ["go", "run", "./examples/frontpiece", "-as", "json"]
    if spec:
        command += ["-spec", str(pathlib.Path(spec).resolve())]
    done = subprocess.run(command, cwd=TOP, stdout=subprocess.PIPE)
    if done.returncode:  # what is wrong stands on standard error already
        sys.exit(1)
    return json.loads(done.stdout)


def place(needle):
    """Places from left to right without a gap: there is no needle 0."""
    number = int(needle[1:])
    return -number if needle[0] == "L" else number - 1


def count(first, last):
    return place(last) - place(first) + 1


def account(panel, rows):
    begins = count(panel["first"], panel["last"])
    left, right = (sum(step["stitches"] for step in panel[edge]) for edge in ("left", "right"))
    knitted = (run for row in rows if row["panel"] == panel["name"] for run in row["knit"])
    return begins, left, right, begins + left + right, sum(count(*run) for run in knitted)


line = "{:<12}{:>8}{:>8}{:>8}{:>8}{:>8}"
usage(sys.argv[1:])
for piece in plan(*sys.argv[1:])["pieces"]:
    print(line.format(piece["name"], "begins", "left", "right", "ends", "loops"))
    for panel in piece["panels"]:
        print(line.format(panel["name"], *account(panel, piece["rows"])))
    print("ledger:", ", ".join(f"{n} {what}" for what, n in piece["ledger"].items() if n))
