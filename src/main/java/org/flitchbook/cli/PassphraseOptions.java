package org.flitchbook.cli;

import java.io.Console;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.flitchbook.keys.Passphrase;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/**
 * Where a passphrase comes from: a person at the terminal, or a file or a variable that the user
 * names. Never the command line itself, which others can see.
 */
final class PassphraseOptions implements Passphrase {

  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--passphrase-file",
      paramLabel = "FILE",
      description = "the first line of this file is the passphrase; else you are asked for it")
  private @Nullable Path file;

  @Option(
      names = "--passphrase-env",
      paramLabel = "VARIABLE",
      description = "this variable of the environment holds the passphrase")
  private @Nullable String variable;

  @Override
  public char[] of(String initials, boolean isNew) {
    if (file != null && variable != null) {
      throw refused("name a file or a variable with the passphrase, not both");
    }
    if (file != null) {
      return read(file);
    }
    return variable != null ? environment(variable) : ask(initials, isNew);
  }

  private char[] read(Path from) {
    try {
      byte[] bytes = Files.readAllBytes(from);
      CharBuffer text = StandardCharsets.UTF_8.decode(ByteBuffer.wrap(bytes));
      Arrays.fill(bytes, (byte) 0);
      int end = 0;
      while (end < text.limit() && text.get(end) != '\n' && text.get(end) != '\r') {
        end++;
      }
      char[] line = new char[end];
      text.get(line);
      Arrays.fill(text.array(), '\0');
      return line;
    } catch (IOException unreadable) {
      throw refused("the passphrase can't be read from " + from);
    }
  }

  private char[] environment(String name) {
    String value = System.getenv(name);
    if (value == null) {
      throw refused("there is no variable " + name + " in the environment");
    }
    return value.toCharArray();
  }

  private char[] ask(String initials, boolean isNew) {
    Console console = terminal();
    char[] first = answer(console, "Passphrase for the key of " + initials + ": ");
    if (isNew) {
      char[] second = answer(console, "Once more: ");
      boolean same = Arrays.equals(first, second);
      Arrays.fill(second, '\0');
      if (!same) {
        throw refused("the two passphrases differ");
      }
    }
    return first;
  }

  /** Newer versions of Java have a console without a terminal, too; the launcher knows better. */
  @SuppressWarnings("SystemConsoleNull")
  private Console terminal() {
    Console console = Boolean.getBoolean("flitchbook.asks") ? System.console() : null;
    if (console == null) {
      throw refused(
          "no terminal to ask for the passphrase; use --passphrase-file or --passphrase-env");
    }
    return console;
  }

  private char[] answer(Console console, String question) {
    char[] answer = console.readPassword("%s", question);
    if (answer == null) {
      throw refused("no passphrase was given");
    }
    return answer;
  }

  private ParameterException refused(String why) {
    return new ParameterException(spec.commandLine(), why);
  }
}
