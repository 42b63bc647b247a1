#!/bin/sh
# Times `roundstar season` on 100, 300 and 1000 nights and prints a table for reports/season-speed.md.
# Run it with nothing else going on, after mvn package:  sh src/bench/season.sh > reports/season-speed.md
# Needs GNU time (Debian: time) and, for the last figure, mvn. Other numbers of nights: NIGHTS='10 20' sh src/bench/season.sh
# A night is half an hour at 3 s, of ten seeds in turn, each on a day of its own, so that no two logs have the same bytes.
set -eu
cd "$(dirname "$0")/../.."
tool=$PWD/target/roundstar/bin/roundstar
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

for seed in 0 1 2 3 4 5 6 7 8 9; do
  sed "s/^seed = .*/seed = $seed/" src/bench/season/half-hour.toml > "$work/seed.toml"
  "$tool" simulate "$work/seed.toml" --out "$work/$seed.ecsv" > /dev/null
done

# One log per day from 2020 on, in the folder $2, $1 of them. Twelve months of 28 days are days enough.
nights() {
  mkdir "$2"
  night=0
  while [ "$night" -lt "$1" ]; do
    day=$(printf '%d-%02d-%02d' $((2020 + night / 336)) $((1 + night / 28 % 12)) $((1 + night % 28)))
    sed "s/^# meta: {start: '[-0-9]*T/# meta: {start: '${day}T/" "$work/$((night % 10)).ecsv" > "$2/$day.ecsv"
    night=$((night + 1))
  done
}

# One job: nights | options of Java.
job() {
  rm -rf "$work/out"
  JAVA_TOOL_OPTIONS=$2 /usr/bin/time -o "$work/time" -f '%e %U %S %M' "$tool" season "$work/$1" --out "$work/out" > /dev/null 2>&1
  written=$(find "$work/out" -name '20*.json' | wc -l)
  awk -v nights="$written" -v options="${2:-as it is}" '{
    cpu = $2 + $3
    printf "| %d | %s | %.1f | %.1f | %.2f | %.0f | %.0f |\n", nights, options, $1, cpu, cpu / $1, 1000 * cpu / nights, $4 / 1024
  }' "$work/time"
}

echo '# How a season of many nights goes'
echo
echo 'Whole processes through `bin/roundstar season`, nights of 600 frames, written by `sh src/bench/season.sh`. Cpu over wall is the number'
echo 'of cores kept busy. Left to itself Java takes memory as long as there is some, so what a season needs is told by the bounded rows.'
echo
echo "Machine: $(nproc) cores, $(sed -n 's/^model name.*: //p' /proc/cpuinfo | head -1), $(awk '/MemTotal/ { printf "%.0f GiB", $2 / 1048576 }' /proc/meminfo); $("${JAVA_HOME:+$JAVA_HOME/bin/}java" -version 2>&1 | sed -n 's/.* version "\([^"]*\)".*/Java \1/p')."
echo
echo '| nights written | memory of Java | wall [s] | cpu [s] | cpu / wall | cpu per night [ms] | peak memory [MiB] |'
echo '|---|---|---|---|---|---|---|'
last=
for count in ${NIGHTS:-100 300 1000}; do
  nights "$count" "$work/$count"
  job "$count" -Xmx160m
  last=$count
done
job "$last" ''

# What one core reads, warm, by the benchmark `parse`: a log of 18,000 frames with some fifteen digits per number.
echo
mvn -B -ntp -q -Pbench test-compile exec:exec -Dbench=parse > "$work/parse"
awk '$1 ~ /HotPaths.parse$/ { printf "Reading a log of 18,000 frames takes %.1f ms, warm and by one thread: %.2f million frames a second per core\n", $(NF-3), 18 / $(NF-3)
  print "(`mvn -q -Pbench test-compile exec:exec -Dbench=parse`)." }' "$work/parse"
