# What .ci/run and .ci/long share. To be sourced.

set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
exec </dev/null

# Nothing that a developer has set changes what is checked.
unset WALEWISE_UPDATE WALEWISE_EXHAUSTIVE WALEWISE_NEED_HOSTILE RAPID_CHECKS RAPID_SEED RAPID_STEPS RAPID_FAILFILE
export GOWORK=off RAPID_NOFAILFILE=1

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

passed=0
failed=0
SECONDS=0

# need PROGRAM DEBIAN-PACKAGE... installs the packages when the program is missing.
need() {
  local program=$1
  shift
  command -v "$program" >/dev/null && return
  if [ "$(id -u)" != 0 ] || ! command -v apt-get >/dev/null; then
    echo "$program is missing: install $*" >&2
    exit 1
  fi
  echo "== install $*"
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$@" >/dev/null
}

# stage NAME COMMAND... runs one check, counts it, and goes on if it fails.
stage() {
  local name=$1 began=$SECONDS code
  shift
  echo "== $name"
  # Not as a condition: bash would then ignore errors within the function.
  set +e
  (
    set -e
    "$@"
  )
  code=$?
  set -e
  if [ "$code" = 0 ]; then
    passed=$((passed + 1))
    echo "-- passed: $name, $((SECONDS - began)) s"
  else
    failed=$((failed + 1))
    echo "-- FAILED: $name (exit code $code), $((SECONDS - began)) s"
  fi
}

# finish closes the run: the last line is the count of the stages.
finish() {
  echo "== all stages, $SECONDS s"
  echo "$passed passed, $failed failed"
  [ "$failed" = 0 ]
}

# fuzz TIME runs every fuzz target of the module for so long.
fuzz() {
  local package target bad=0 count=0
  go test -list '^Fuzz' ./... >"$scratch/list"
  awk '/^Fuzz/ { names[n++] = $1 } /^ok/ { for (i = 0; i < n; i++) print $2, names[i]; n = 0 }' \
    "$scratch/list" >"$scratch/targets"
  while read -r package target; do
    count=$((count + 1))
    echo "$package $target"
    fuzz_one "$1" "$package" "$target" || bad=$((bad + 1))
  done <"$scratch/targets"
  echo "$count targets, $bad failed"
  [ "$bad" = 0 ]
}

fuzz_one() {
  local try
  for try in 1 2; do
    if go test -run '^$' -fuzz "^$3\$" -fuzztime "$1" -fuzzminimizetime 2s "$2" >"$scratch/fuzz" 2>&1; then
      return 0
    fi
    # The go command at times takes the end of the time for a failure of the
    # target: there is no failing input then. One more try decides.
    if grep -q 'Failing input written' "$scratch/fuzz" || ! grep -q 'context deadline exceeded' "$scratch/fuzz"; then
      break
    fi
  done
  cat "$scratch/fuzz"
  return 1
}
