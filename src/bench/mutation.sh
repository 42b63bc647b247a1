#!/usr/bin/env bash
# Changes the compiled code of signal and sky in small ways, runs their tests on each change, and writes what no test noticed.
#   bash src/bench/mutation.sh reports/mutation.md [packages or classes such as signal.Quantile, default: signal sky]
# Both packages take some ten minutes of one core, and took 28 minutes on two cores that twenty other processes wanted too; a class
# against its own test class takes seconds. A change that makes a test run for ever counts as noticed; the table says how many did,
# since on a busy machine a test may just be late: look at their loops if there are more than a few.
# Left out by the profile `mutation`, beside what every build leaves out, are tests tagged `slow`: hundreds of simulated series to count
# how often an interval holds the truth, and sums over very many samples. They take more time than all other tests of signal together,
# and a change that nobody notices runs through every test that reaches it. One at a time (threads in the profile), so that a test is
# never late because of another.
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
