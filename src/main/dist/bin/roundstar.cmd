@echo off
rem Starts roundstar from the distribution this file lies in, with the Java of JAVA_HOME or else the one on PATH.
rem As bin/roundstar, without its archive of classes. No blocks: a parenthesis in a path, as of "Program Files (x86)", would end them.
setlocal EnableExtensions DisableDelayedExpansion
for %%h in ("%~dp0..") do set "home=%%~fh"

set "java="
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java.exe"
if defined JAVA_HOME if not exist "%java%" echo roundstar: JAVA_HOME: found no "%java%": let it name a Java 17 or newer, or unset it 1>&2
if defined JAVA_HOME if not exist "%java%" exit /b 4
if not defined java for %%j in (java.exe) do set "java=%%~$PATH:j"
if not defined java echo roundstar: found no java on PATH: install Java 17 or newer, or set JAVA_HOME 1>&2
if not defined java exit /b 4

rem Its release file spares the start of a second JVM.
set "version="
for %%r in ("%java%\..\..\release") do set "release=%%~fr"
if exist "%release%" for /f "usebackq tokens=1,2 delims==" %%k in ("%release%") do if "%%k"=="JAVA_VERSION" set "version=%%~l"
if not defined version for /f "usebackq tokens=2,3" %%k in (`^""%java%" -version 2^>^&1^"`) do if "%%k"=="version" set "version=%%~l"
set "major=0"
for /f "delims=.-_+" %%m in ("%version%") do set "major=%%m"
if not defined version set "version=of unknown version"
if %major% lss 17 echo roundstar: "%java%": found Java %version%: install Java 17 or newer, or set JAVA_HOME 1>&2
if %major% lss 17 exit /b 4

rem Logs dropped onto this file are analysed, and the page is opened; the results go beside the first. The desktop then calls it by
rem its whole quoted path and gives whole paths; the window of a drop or a double click would close before a word could be read.
set "first=%~1"
set "drop="
set "wait="
if not defined cmdcmdline goto typed
set "called=%cmdcmdline:"=?%"
if "%called%"=="%called:/c ??=%" goto typed
if not defined first set "wait=yes"
if "%first:~1,2%"==":\" if exist "%first%" set "drop=--open"
if defined drop cd /d "%~dp1"
if defined drop set "wait=yes"
:typed

rem The command is the first word that is no option. An option's value after = counts as a word here, which at worst costs time.
set "command="
set "words=0"
:word
if [%1]==[] goto found
set /a words+=1
rem A letter before it, since of an empty variable no part can be taken.
set "word=x%~1"
if not defined command if not "%word:~1,1%"=="-" set "command=%word:~1%"
shift /1
goto word
:found
rem Short work is over before a second compiler or a parallel collector pays; long work keeps both.
set "short=-XX:+IgnoreUnrecognizedVMOptions -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -XX:Tier3BackEdgeThreshold=4000 -XX:MaxNewSize=32m"
for %%c in (compare season simulate) do if "%command%"=="%%c" set "short="
if "%command%"=="stars" if %words% gtr 9 set "short="
if defined short if not "%command%"=="stars" set "short=%short% -XX:C1MaxInlineSize=20"

rem The JVM logs its warnings to stdout unless told otherwise.
"%java%" -Xlog:disable -Xlog:all=warning,cds*=off,class+path*=off:stderr -Xshare:auto -Djava.awt.headless=true -cp "%home%\lib\roundstar.jar;%home%\lib\*" %short% io.github.roundstar.cli.Main %drop% %*
set "code=%errorlevel%"
if defined wait if not "%code%"=="0" pause
exit /b %code%
