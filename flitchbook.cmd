@echo off
rem Starts Flitchbook. Builds it first where the jar is missing; after a change of the sources run
rem mvnw.cmd package. Needs a JDK 17 or later: JAVA_HOME, or java on the PATH.
rem FLITCHBOOK_JAVA_OPTS holds further options for java.
setlocal
set "HOME_DIR=%~dp0"
set "JAR=%HOME_DIR%target\flitchbook.jar"
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java.exe"

if exist "%JAR%" goto start
echo flitchbook: building once, this takes a minute ... 1>&2
pushd "%HOME_DIR%"
call mvnw.cmd -q -B -Dmaven.test.skip=true package 1>&2
popd
if exist "%JAR%" goto start
echo flitchbook: the build failed for the reason above 1>&2
exit /b 70

:start
rem Java finds out whether somebody sits there, and says so from version 22 on only if it is told to.
"%JAVA%" -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -Xshare:auto -Djdk.console=java.base -Dflitchbook.asks=console %FLITCHBOOK_JAVA_OPTS% -jar "%JAR%" %*
exit /b %ERRORLEVEL%
