@echo off
rem Starts roundstar from the distribution this file lies in, with the Java of JAVA_HOME or else the one on PATH.
setlocal
set "home=%~dp0.."
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java.exe"
rem No blocks: a parenthesis in a path, as of "Program Files (x86)", would end them.
if defined JAVA_HOME if not exist "%java%" echo roundstar: JAVA_HOME: found no "%java%": let it name a Java 17 or newer, or unset it 1>&2
if defined JAVA_HOME if not exist "%java%" exit /b 4
"%java%" -version >nul 2>&1
if errorlevel 1 echo roundstar: found no java on PATH: install Java 17 or newer, or set JAVA_HOME 1>&2
if errorlevel 1 exit /b 4
"%java%" -Xlog:disable -Xlog:all=warning:stderr -XX:+UseSerialGC -Djava.awt.headless=true -cp "%home%\lib\roundstar.jar;%home%\lib\*" io.github.roundstar.cli.Main %*
exit /b %errorlevel%
