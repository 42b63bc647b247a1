#!/usr/bin/env bash
# PIT's CSV files as one table: per class the changes made, those that a test noticed, and where the others are. Ends with 1 when a
# package misses the goal.
set -euo pipefail
LC_ALL=C sort -t, -k2,2 -k5,5n "$@" | awk -F, '
  {
    split($2, name, "$"); sub(/^io\.github\.roundstar\./, "", name[1]); class = name[1]
    if (!(class in made)) order[++classes] = class
    package = class; sub(/\..*/, "", package)
    if (!(package in madeIn)) packages[++packageCount] = package
    made[class]++; madeIn[package]++
    if ($6 == "TIMED_OUT") endless[package]++
    if ($6 == "KILLED" || $6 == "TIMED_OUT" || $6 == "MEMORY_ERROR" || $6 == "RUN_ERROR") { noticed[class]++; noticedIn[package]++ }
    else if (!((class, $5) in told)) { told[class, $5]; lines[class] = lines[class] " " $5 }
  }
  END {
    print "# How many small changes of the code the tests notice\n"
    print "PIT changes compiled code: a bound, a sign, a result. Written by `src/bench/mutation.sh`, which holds only the packages it was asked for; the goal is 80 % of each. Tests tagged `slow`, `long` or `reference-data` do not take part.\n"
    print "| package | changes | noticed | | of these by a test that ran for ever |\n|---|---|---|---|---|"
    for (i = 1; i <= packageCount; i++) {
      p = packages[i]; missed += noticedIn[p] < 0.8 * madeIn[p]
      printf "| %s | %d | %d | %.0f %% | %d |\n", p, madeIn[p], noticedIn[p], 100 * noticedIn[p] / madeIn[p], endless[p]
    }
    print "\n| class | changes | noticed | | lines with one that nobody noticed |\n|---|---|---|---|---|"
    for (i = 1; i <= classes; i++) {
      c = order[i]; printf "| %s | %d | %d | %.0f %% |%s |\n", c, made[c], noticed[c], 100 * noticed[c] / made[c], lines[c]
    }
    exit missed > 0
  }'
