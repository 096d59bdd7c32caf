package org.flitchbook.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.flitchbook.keys.Keys;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code flitchbook key}. */
@Command(
    name = "key",
    description = "Looks after the keys that people sign with.",
    mixinStandardHelpOptions = true)
final class KeyCommand implements Runnable {

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "Say what to do with the key." + System.lineSeparator());
  }

  static final class Whose {

    @Option(
        names = "--for",
        required = true,
        paramLabel = "INITIALS",
        description = "whose key, by the initials in the plan")
    private String initials;

    @Option(
        names = "--book",
        paramLabel = "BOOK",
        defaultValue = "",
        description = "the book's folder; else the folder you are in")
    private Path book;

    @Mixin private Folder keys;

    Keys.Request request() {
      return new Keys.Request(book.toAbsolutePath(), initials, keys.path());
    }
  }

  /** Where the keys lie. */
  static final class Folder {

    @Option(
        names = "--keys",
        paramLabel = "DIR",
        description = "the folder of the keys; else .flitchbook/keys in your home folder")
    private Optional<Path> folder;

    Path path() {
      return folder.orElseGet(
          () -> Path.of(System.getProperty("user.home"), ".flitchbook", "keys"));
    }
  }

  @Command(
      name = "new",
      description =
          "Makes a key for a person of the plan, closed with a passphrase, and enters its"
              + " fingerprint in plan.json.",
      mixinStandardHelpOptions = true)
  int make(
      @Mixin Whose whose,
      @Option(names = "--rsa", description = "RSA with 3,072 bits; else an elliptic curve, P-256")
          boolean rsa,
      @Option(
              names = "--leave-plan",
              description = "leaves plan.json alone and tells the line to add")
          boolean leave,
      @Mixin PassphraseOptions passphrase) {
    return Terminal.run(
        spec, false, session -> Keys.make(session, whose.request(), rsa, !leave, passphrase));
  }

  @Command(
      name = "show",
      description = "Shows a person's key, without its secret.",
      mixinStandardHelpOptions = true)
  int show(@Mixin Whose whose) {
    return Terminal.run(spec, false, session -> Keys.show(session, whose.request()));
  }

  @Command(
      name = "retire",
      description = "Marks a person's key as retired in plan.json; what it signed stays good.",
      mixinStandardHelpOptions = true)
  int retire(
      @Mixin Whose whose,
      @Option(
              names = "--on",
              paramLabel = "DAY",
              description = "the last day on which it counts; else today")
          Optional<String> on) {
    return Terminal.run(spec, false, session -> Keys.retire(session, whose.request(), on));
  }
}
