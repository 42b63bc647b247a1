#!/usr/bin/env bash
# Runs bin/roundstar.cmd by wine with a stand-in for java.exe, and compares what that is given with what bin/roundstar gives.
#   bash src/test/windows/launcher.sh
# Needs Debian's wine and gcc-mingw-w64-x86-64, no screen; takes some 20 s. Prints one line per check and ends with 1 if one failed.
# Not seen here is what wine does unlike Windows: it expands a percent sign in an argument once more, and takes labels in files with
# bare line feeds. Nor what the launcher does without: an archive of classes, the fonts of its own folder, large pages.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../../.."
work=$(mktemp -d)
export WINEPREFIX=$work/prefix WINEDEBUG=-all LC_ALL=C.UTF-8
unset JAVA_HOME XDG_CACHE_HOME WINEPATH
trap 'wineserver -k || true; rm -rf "$work"' EXIT
wine wineboot -i >"$work/boot" 2>&1

home="$work/round & star (x86) ä!/a b"
java="$work/java (x86) é"
mkdir -p "$home/bin" "$home/lib" "$java/bin"
cp src/main/dist/bin/roundstar src/main/dist/bin/roundstar.cmd "$home/bin"
: >"$home/lib/roundstar.jar"
x86_64-w64-mingw32-gcc -municode -O1 -o "$java/bin/java.exe" src/test/windows/java.c
printf '#!/bin/sh\nprintf "%%s\\n" "$@"\nexit 7\n' >"$java/bin/java"
chmod +x "$java/bin/java"

# The same path as Windows writes it.
windows() { printf 'Z:%s' "${1//\//\\}"; }

# Runs a line of a command file, not called, so that its exit code is that of the launcher. Bytes are those of the code page 437.
run() {
  printf '@echo off\n%s\n' "$1" | iconv -t CP437 | sed 's/$/\r/' >"$work/line.cmd"
  code=0
  (cd "$work" && wine cmd /c line.cmd) >"$work/out" 2>"$work/err" || code=$?
}
launch() { run "\"$(windows "$home/bin/roundstar.cmd")\" $1"; }

failed=0
# check NAME EXPECTED FOUND
check() {
  if [ "$2" = "$3" ]; then
    echo "ok      $1"
  else
    failed=1
    printf 'FAILED  %s\nexpected:\n%s\nfound:\n%s\n' "$1" "$2" "$3"
  fi
}
words() { sed '1,/^io.github.roundstar.cli.Main$/d' "$work/out"; }
# Flags before the main class, without the class path and what only the other launcher gives.
flags() {
  sed '/^io.github.roundstar.cli.Main$/,$d; /^-cp$/,+1d; /^-XX:+UseTransparentHugePages$/d' "$1" | sort
}

export JAVA_HOME
JAVA_HOME=$(windows "$java")
printf 'IMPLEMENTOR="Somebody"\r\nJAVA_VERSION="17.0.15"\r\n' >"$java/release"
for line in '' --help 'analyze a.ecsv' 'layout a' 'tolerance' '--verbose season a' 'compare a b' 'simulate a' \
  'stars a' 'stars a b c d e f g h' 'stars a b c d e f g h i' 'analyze --out=season a'; do
  launch "$line"
  check "flags of '$line'" "$(JAVA_HOME=$java sh "$home/bin/roundstar" $line >"$work/posix" || true; flags "$work/posix")" \
    "$(flags "$work/out")"
  check "words of '$line'" "$(printf '%s\n' $line)" "$(words)"
  check "exit code of '$line'" 7 "$code"
done
check 'class path' "$(windows "$home/lib/roundstar.jar");$(windows "$home/lib/*")" "$(sed -n '/^-cp$/{n;p}' "$work/out")"

launch 'analyze "one two" "" "a&b" "x!y" !z! "(q)" "c^d" "*" --out=ä.html "äöü é.log" "a\\" "say \"hi\"" -- last'
check 'blanks, quotes, signs and letters' \
  "$(printf '%s\n' analyze 'one two' '' 'a&b' 'x!y' '!z!' '(q)' 'c^d' '*' '--out=ä.html' 'äöü é.log' 'a\' 'say "hi"' -- last)" "$(words)"
check 'nothing on stderr' '' "$(cat "$work/err")"

# Wine tells no cmdcmdline, so a line sets it as the desktop has it.
desktop='set cmdcmdline=C:\windows\system32\cmd.exe /c ""Z:\x\roundstar.cmd" log"'
mkdir -p "$work/a & b"
: >"$work/a & b/one two.log"
run "$desktop
\"$(windows "$home/bin/roundstar.cmd")\" \"$(windows "$work/a & b/one two.log")\" <nul"
check 'logs dropped onto the launcher are opened' "$(printf '%s\n' --open "$(windows "$work/a & b/one two.log")")" \
  "$(words | grep -v '^Press any key')"
run "$desktop
\"$(windows "$home/bin/roundstar.cmd")\" analyze a <nul"
check 'a command from the desktop is passed on' "$(printf '%s\n' analyze a)" "$(words)"

refused() { # NAME WORDS
  check "$1: exit code" 4 "$code"
  check "$1: nothing started" '' "$(cat "$work/out")"
  check "$1: one line with '$2'" "1 of 1" \
    "$(LC_ALL=C grep -c "^roundstar: .*$2" "$work/err" || true) of $(wc -l <"$work/err")"
}
for version in 1.8.0_392 11.0.22 16; do
  printf 'JAVA_VERSION="%s"\r\n' "$version" >"$java/release"
  launch 'analyze a'
  refused "Java $version" "found Java $version: install Java 17"
done
for version in 17 21-ea 25.0.3; do
  printf 'JAVA_VERSION="%s"\r\n' "$version" >"$java/release"
  launch 'analyze a'
  check "Java $version is taken" 7 "$code"
done
rm "$java/release"
launch 'analyze a'
check 'Java without release file is asked and taken' 7 "$code"
export STAND_IN_VERSION=
launch 'analyze a'
refused 'Java that tells no version' 'found Java of unknown version'
export STAND_IN_VERSION=11.0.22
launch 'analyze a'
refused 'Java without release file' 'found Java 11.0.22'
unset STAND_IN_VERSION
JAVA_HOME=$(windows "$work")
launch 'analyze a'
refused 'JAVA_HOME without Java' 'JAVA_HOME: found no'
unset JAVA_HOME
launch 'analyze a'
refused 'no Java anywhere' 'found no java on PATH'
export WINEPATH
WINEPATH=$(windows "$java/bin")
launch 'analyze a'
check 'Java on PATH is taken' 7 "$code"

exit "$failed"
