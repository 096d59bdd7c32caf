package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.flitchbook.OwnFolders;

/** The program in a Java machine of its own, which can be killed, starved and asked. */
record Child(Process process) {

  /** Starts the program with a command line. */
  static Child start(Object... words) throws IOException {
    return start(command(List.of(), words));
  }

  private static Child start(List<String> command) throws IOException {
    return new Child(new ProcessBuilder(command).redirectErrorStream(true).start());
  }

  /** Runs the program in a machine that is told so much of its ways, and knows no locale. */
  static Ran elsewhere(List<String> options, Object... words) throws Exception {
    ProcessBuilder builder = new ProcessBuilder(java(options, words)).redirectErrorStream(true);
    builder.environment().put("LC_ALL", "C");
    return new Child(builder.start()).ended();
  }

  /** The words that start the program: its Java machine, as quick to start as it can be. */
  private static List<String> command(List<String> options, Object... words) {
    List<String> all = new ArrayList<>();
    all.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xshare:auto"));
    all.addAll(options);
    return java(all, words);
  }

  private static List<String> java(List<String> options, Object... words) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(OwnFolders.options());
    command.addAll(options);
    command.addAll(List.of("-cp", classPath(), Main.class.getName()));
    Arrays.stream(words).map(Object::toString).forEach(command::add);
    return command;
  }

  /** Where the tests are run by a loader of their own, the machine's class path doesn't name it. */
  private static String classPath() {
    if (Main.class.getClassLoader() instanceof URLClassLoader loader) {
      return Arrays.stream(loader.getURLs())
          .map(url -> Path.of(URI.create(url.toString())).toString())
          .collect(Collectors.joining(File.pathSeparator));
    }
    String path = System.getProperty("java.class.path");
    return System.getProperty("surefire.test.class.path", path);
  }

  /**
   * Runs the program where no file may grow beyond a size.
   *
   * @param blocks of 512 bytes, as POSIX has it
   */
  static Ran starved(Path shell, int blocks, Object... words) throws Exception {
    List<String> command = new ArrayList<>();
    command.addAll(List.of(shell.toString(), "-c", "ulimit -f " + blocks + "; exec \"$@\"", "sh"));
    command.addAll(command(List.of("-XX:-UsePerfData"), words));
    return start(command).ended();
  }

  /** Runs the program in 256 MB, and gives it ten seconds of work; while others work, more time. */
  static Ran small(Object... words) throws Exception {
    Path said = Files.createTempFile("said", ".txt");
    Process process =
        new ProcessBuilder(command(List.of("-Xmx256m"), words))
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start();
    try {
      for (int waited = 0; !process.waitFor(1, TimeUnit.SECONDS); waited++) {
        long work = process.info().totalCpuDuration().orElse(Duration.ZERO).toSeconds();
        if (work >= 10 || waited >= 40) {
          throw new AssertionError("not done after ten seconds: " + Files.readString(said));
        }
      }
      return new Ran(process.exitValue(), Files.readString(said), "");
    } finally {
      process.destroyForcibly();
      Files.delete(said);
    }
  }

  /**
   * Starts the program on a pseudo-terminal, where it believes that a person sits.
   *
   * @param script the program of that name, which makes the terminal
   */
  static Child onTerminal(Path script, Object... words) throws IOException {
    return onTerminal(script, List.of("-Dflitchbook.asks=true"), words);
  }

  /** The same, started in another way. */
  static Child onTerminal(Path script, List<String> options, Object... words) throws IOException {
    String line =
        command(options, words).stream()
            .map(word -> "'" + word + "'")
            .collect(Collectors.joining(" "));
    return start(List.of(script.toString(), "-qec", line, "/dev/null"));
  }

  /** Waits until the program has said something, and answers it. */
  String answer(String question, String answer) throws IOException {
    StringBuilder said = new StringBuilder();
    while (said.indexOf(question) < 0) {
      int letter = process.getInputStream().read();
      if (letter < 0) {
        throw new AssertionError("never asked \"" + question + "\": " + said);
      }
      said.append((char) letter);
    }
    process.getOutputStream().write((answer + "\n").getBytes(UTF_8));
    process.getOutputStream().flush();
    return said.toString();
  }

  /** Waits for the end; both streams are in {@link Ran#out}. */
  Ran ended() throws Exception {
    String said = new String(process.getInputStream().readAllBytes(), UTF_8);
    return new Ran(process.waitFor(), said.replace(System.lineSeparator(), "\n"), "");
  }

  /** Kills it as a power cut would: it can't do anything about it (SIGKILL). */
  void kill() throws Exception {
    process.destroyForcibly();
    process.waitFor();
  }
}
