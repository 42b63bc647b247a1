#!/bin/sh
# Times the whole process, start to written report, as a user meets it, and prints a table for reports/speed.md.
# Run it with nothing else going on, after mvn package:  sh src/bench/speed.sh > reports/speed.md
# Needs GNU time (Debian: time). Each row is run ROUNDS times in turn with the others; medians are printed.
# With numpy, scipy and matplotlib (Debian: python3-scipy, python3-matplotlib) a plain script on the same log runs in turn too.
set -eu
cd "$(dirname "$0")/../.."
tool=$PWD/target/roundstar/bin/roundstar
rounds=${ROUNDS:-7}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
python=
for candidate in python3 /usr/bin/python3; do
  if [ -z "$python" ] && "$candidate" -c 'import numpy, scipy, matplotlib' 2> /dev/null; then python=$candidate; fi
done
night='18,000 frames, ten hours'
few='the first fifty of them'
script='the same ten hours by a script in scientific Python'

# The season in one file: the ten hours $1 times, a day apart.
season() {
  awk -v nights="$1" '
    /^#   - \{run: / { if (!said++) for (n = 0; n < nights; n++) {
        day = sprintf("2026-%02d-%02d", 1 + int(n / 28), 1 + n % 28)
        print "#   - {run: " 2*n+1 ", start: \x27" day "T17:00:00Z\x27, declination: 30.0, hour_angle: -5.0, pier_side: west}"
        print "#   - {run: " 2*n+2 ", start: \x27" day "T22:02:00Z\x27, declination: 30.0, hour_angle: 0.05, pier_side: east}" }
      next }
    /^[0-9]/ { rows[++count] = $0; next }
    { print }
    END { for (n = 0; n < nights; n++) for (i = 1; i <= count; i++) {
        comma = index(rows[i], ","); print substr(rows[i], 1, comma - 1) + 2*n substr(rows[i], comma) } }
  ' "$work/ten-hours.ecsv" > "$2"
}

"$tool" simulate src/bench/speed/ten-hours.toml --out "$work/ten-hours.ecsv" > /dev/null
awk '/^[0-9]/ && rows++ == 50 { exit } !/run: 2/' "$work/ten-hours.ecsv" > "$work/fifty.ecsv"
season 6 "$work/100k.ecsv"
season 56 "$work/1000k.ecsv"
java -cp "target/roundstar/lib/*" src/bench/speed/LargeFrame.java "$work/large.fits" 2> /dev/null

# name | memory of Java | how often | command
cat > "$work/rows" <<ROWS
help||$rounds|--help
tolerance||$rounds|tolerance --equipment sample-logs/equipment.toml
layout of a log||$rounds|layout sample-logs/layouts/crane.log
a sample night||$rounds|analyze --quiet --out $work/out --equipment sample-logs/equipment.toml sample-logs/good-night.ecsv
$night||$rounds|analyze --quiet --out $work/out $work/ten-hours.ecsv
$few||$rounds|analyze --quiet --out $work/out $work/fifty.ecsv
108,000 frames in one file, six nights|-Xmx256m|1|analyze --quiet --out $work/out $work/100k.ecsv
1,008,000 frames in one file, 56 nights|-Xmx256m|1|analyze --quiet --out $work/out $work/1000k.ecsv
stars of a 24-megapixel frame||$rounds|stars $work/large.fits
ROWS
if [ -n "$python" ]; then
  echo "$script||$rounds|src/bench/speed/general.py $work/ten-hours.ecsv $work/python" >> "$work/rows"
fi

# Whose command it is.
program() { case $1 in *.py\ *) echo "$python" ;; *) echo "$tool" ;; esac; }

# One run of each before anything counts: the archive of classes is made, the files are in memory.
while IFS='|' read -r name memory times command; do
  [ "$times" -eq 1 ] || "$(program "$command")" $command > /dev/null 2>&1
done < "$work/rows"
round=1
while [ "$round" -le "$rounds" ]; do
  row=0
  while IFS='|' read -r name memory times command; do
    row=$((row + 1))
    [ "$round" -le "$times" ] || continue
    JAVA_TOOL_OPTIONS=$memory /usr/bin/time -a -o "$work/times.$row" -f '%e %U %S %M' "$(program "$command")" $command \
      > /dev/null 2>&1
  done < "$work/rows"
  round=$((round + 1))
done

median() { cut -d' ' -f"$2" "$work/times.$1" | sort -n | awk '{ v[NR] = $1 } END { print v[int((NR + 1) / 2)] }'; }

echo '# How fast roundstar is'
echo
echo "Whole processes through \`bin/roundstar\`, archive of classes warm, medians of up to $rounds runs taken in turn; written by"
echo "\`sh src/bench/speed.sh\`."
echo
echo "Machine: $(nproc) cores, $(sed -n 's/^model name.*: //p' /proc/cpuinfo | head -1), $(awk '/MemTotal/ { printf "%.0f GiB", $2 / 1048576 }' /proc/meminfo); $("${JAVA_HOME:+$JAVA_HOME/bin/}java" -version 2>&1 | sed -n 's/.* version "\([^"]*\)".*/Java \1/p')."
echo
echo '| job | wall [s] | cpu [s] | memory [MiB] |'
echo '|---|---|---|---|'
row=0
ours=
least=
while IFS='|' read -r name memory times command; do
  row=$((row + 1))
  [ "$name" != "$night" ] || ours=$(median $row 1)
  [ "$name" != "$few" ] || least=$(median $row 1)
  [ "$name" != "$script" ] || theirs=$(median $row 1)
  awk -v name="$name${memory:+, \`$memory\`}" -v wall="$(median $row 1)" -v user="$(median $row 2)" -v sys="$(median $row 3)" \
    -v kib="$(median $row 4)" 'BEGIN { printf "| %s | %.2f | %.2f | %.0f |\n", name, wall, user + sys, kib / 1024 }'
done < "$work/rows"

echo
if [ -n "$python" ]; then
  awk -v ours="$ours" -v theirs="$theirs" -v least="$least" 'BEGIN {
    printf "The ten hours take roundstar %.2f of the wall time of the script `src/bench/speed/general.py`, which parses them, takes\n", ours / theirs
    print "RMS, drifts and a periodogram, and draws six SVG charts. The target is 0.55 of it, and 0.80 s."
    printf "Fifty frames, which ask for next to no arithmetic, take %.2f s or %.2f of it: what the JVM, its compiler and the libraries\n", least, least / theirs
    print "for options, charts and pages cost on their first and only use." }'
else
  echo "A script in scientific Python was to be timed beside these; it was left out, since numpy, scipy and matplotlib are not all here."
fi
