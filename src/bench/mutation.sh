#!/usr/bin/env bash
# Changes the compiled code of signal and sky in small ways, runs their tests on each change, and writes what no test noticed.
#   bash src/bench/mutation.sh reports/mutation.md [packages or classes such as signal.Quantile, default: signal sky]
# Both packages take MINUTES; a class against its own test class takes seconds. A change that makes a test run for ever counts as
# noticed, and the table says how many did: on a machine too busy to finish a test in time there would be more of them than loops that
# can run for ever.
# Left out, by the profile `mutation`, are tests tagged `slow` (hundreds of simulated series to count how often an interval covers the
# truth, a quarter of a million samples), `long` and `reference-data`. A change that nobody notices runs through every test that
# reaches it, and the slow ones, of which there are a dozen, take as long as all the others together, some five hundred times over.
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
    *.*) classes="io.github.roundstar.$part,io.github.roundstar.$part\$*" tests="io.github.roundstar.${part}Test" ;;
    *) classes="io.github.roundstar.$part.*" tests=$classes ;;
  esac
  mvn -B -ntp -Pmutation org.pitest:pitest-maven:mutationCoverage \
    -DtargetClasses="$classes" -DtargetTests="$tests" -DreportsDirectory="$found/$part"
done
met=0
bash src/bench/mutation/table.sh "$found"/*/mutations.csv >"$report.part" || met=$?
mv -f "$report.part" "$report"
exit "$met"
