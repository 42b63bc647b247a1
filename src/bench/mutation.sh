#!/usr/bin/env bash
# Changes the compiled code of signal and sky in small ways, runs their tests on each change, and writes what no test noticed.
# A quarter of an hour and more on two cores. A change that makes a test run for ever counts as noticed.
#   bash src/bench/mutation.sh reports/mutation.md [package or class, default: signal sky]
set -euo pipefail
report=$(realpath -m -- "${1:?name the report}")
shift
(($# > 0)) || set -- signal sky
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

mvn -B -ntp -q test-compile
found=$(mktemp -d)
trap 'rm -rf "$found"' EXIT
for part; do
  case $part in
    *.*) classes="io.github.roundstar.$part*" tests="io.github.roundstar.${part%%.*}.*" ;;
    *) classes="io.github.roundstar.$part.*" tests=$classes ;;
  esac
  mvn -B -ntp -Pmutation org.pitest:pitest-maven:mutationCoverage -DmutationThreshold=0 \
    -DtargetClasses="$classes" -DtargetTests="$tests" -DreportsDirectory="$found/$part"
done
bash src/bench/mutation/table.sh "$found"/*/mutations.csv >"$report.part"
mv -f "$report.part" "$report"
