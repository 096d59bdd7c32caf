package org.flitchbook.cli;

import static org.flitchbook.message.Message.say;

import java.io.Console;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.flitchbook.document.Text;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.keys.KeyFolder;
import org.flitchbook.keys.Keys.Passphrase;
import org.flitchbook.message.Message;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/**
 * Where a passphrase comes from: a person at the terminal, or a file or a variable that the user
 * names. Never the command line itself, which others can see.
 */
final class PassphraseOptions implements Passphrase {

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
  public char[] of(Session session, String initials, boolean isNew) {
    if (file != null && variable != null) {
      throw new UsageException(
          "cli.passphrase.both", "name a file or a variable with the passphrase, not both");
    }
    if (file != null) {
      KeyFolder.noteOthers(session, file);
      return read(file);
    }
    return variable != null ? environment(variable) : ask(session, initials, isNew);
  }

  private static char[] read(Path from) {
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
      throw new UsageException(
          unreadable, "cli.passphrase.unreadable", "the passphrase can't be read from {0}", from);
    }
  }

  private static char[] environment(String name) {
    String value = System.getenv(name);
    if (value == null) {
      throw new UsageException(
          "cli.passphrase.no-variable", "there is no variable {0} in the environment", name);
    }
    return value.toCharArray();
  }

  private char[] ask(Session session, String initials, boolean isNew) {
    Console console = terminal();
    Message question = say("cli.passphrase.ask", "Passphrase for the key of {0}: ", initials);
    char[] first = answer(console, session.say(question));
    if (isNew) {
      Message again = say("cli.passphrase.again", "Once more: ");
      char[] second = answer(console, session.say(again));
      boolean same = Arrays.equals(first, second);
      Arrays.fill(second, '\0');
      if (!same) {
        throw new UsageException("cli.passphrase.differ", "the two passphrases differ");
      }
    }
    return first;
  }

  /** Newer versions of Java have a console without a terminal, too; the launcher knows better. */
  @SuppressWarnings("SystemConsoleNull")
  private static Console terminal() {
    Console console = Terminal.asks() ? System.console() : null;
    if (console == null) {
      throw new UsageException(
          "cli.passphrase.no-terminal",
          "no terminal to ask for the passphrase; use --passphrase-file or" + " --passphrase-env");
    }
    return console;
  }

  private static char[] answer(Console console, String question) {
    char[] answer = console.readPassword("%s", Text.printable(question));
    if (answer == null) {
      throw new UsageException("cli.passphrase.none", "no passphrase was given");
    }
    return answer;
  }
}
