package org.flitchbook.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.OwnFolders;
import org.flitchbook.sign.Seals;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.Signing.KeyHolder;
import org.flitchbook.sign.SigningKey;

/**
 * A copy of the example book with keys for its people, in which days are closed and records signed.
 */
final class Smokeyard {

  static final String RECORD = "records/" + Tree.DAY + "/r1/26047-B1.pdf";

  /** Nobody else of the plan has not written in the lot. */
  private static final String REVIEWER =
      "{\"initials\": \"OR\", \"name\": \"Odo Rivett\", \"roles\": [\"reviewer\"]},";

  private static final Pattern PRINT = Pattern.compile("fingerprint {2}([0-9a-f]{64})");

  static final String PASSPHRASE = "smoke over the fen";

  final Path book;
  final Path keys;
  final Path record;
  final Path passphrase;

  private Smokeyard(Path folder, Path book) {
    this.book = book;
    keys = folder.resolve("keys");
    record = book.resolve(RECORD);
    passphrase = folder.resolve("passphrase");
  }

  /** A copy of the yard that is {@link #made} once, with the day closed and nothing signed. */
  static Smokeyard closed(Path folder) {
    return Once.CLOSED.copied(folder);
  }

  /** A copy of the same yard with its record signed by both. */
  static Smokeyard signed(Path folder) {
    return Once.SIGNED.copied(folder);
  }

  /** With its people in the plan and nothing done yet. */
  static Smokeyard withoutKeys(Path folder) {
    Smokeyard yard = new Smokeyard(folder, Tree.example(folder));
    Tree.edit(yard.book.resolve("plan.json"), "\"people\": [", "\"people\": [" + REVIEWER);
    Tree.write(yard.passphrase, PASSPHRASE);
    return yard;
  }

  /** With new keys of both in the plan, and the day closed. */
  static Smokeyard made(Path folder) {
    Smokeyard yard = withoutKeys(folder);
    yard.key("MA");
    yard.key("OR");
    yard.close();
    return yard;
  }

  /** Made where a test first asks for one, for all tests of a Java machine. */
  private static final class Once {
    static final Smokeyard CLOSED = made(OwnFolders.shared("closed"));
    static final Smokeyard SIGNED = CLOSED.copied(OwnFolders.shared("signed")).signedByBoth();
  }

  private Smokeyard copied(Path folder) {
    Path from = book.getParent();
    Tree.copy(from, folder);
    return new Smokeyard(folder, folder.resolve(from.relativize(book)));
  }

  /** A new key, which opens at once, entered in the plan. */
  void key(String initials) {
    key(initials, book, keys);
  }

  /** As `key new` makes it for somebody in the plan, without the time that its rounds take. */
  static void key(String initials, Path book, Path keys) {
    Path plan = book.resolve("plan.json");
    Matcher person =
        Pattern.compile("\\{\"initials\": \"" + initials + "\", \"name\": \"(.*?)\".*?\\]")
            .matcher(Tree.text(plan));
    if (!person.find()) {
      throw new AssertionError(initials + " is not in " + plan);
    }
    SigningKey key = Seals.key(new KeyHolder(initials, person.group(1), "Wrenfold Smokeyard"));
    Tree.edit(
        plan, person.group(), person.group() + ", \"key\": \"" + key.info().fingerprint() + "\"");
    byte[] file = Seals.quick(key, PASSPHRASE);
    Tree.write(keys.resolve(initials + ".pem"), Signing.certificate(key));
    Tree.write(
        keys.resolve(initials + ".p12"), () -> Files.write(keys.resolve(initials + ".p12"), file));
  }

  /** The fingerprint of a key that was made. */
  String fingerprint(String initials) {
    Matcher print = PRINT.matcher(showing(initials).out());
    if (!print.find()) {
      throw new AssertionError(initials + " has no key");
    }
    return print.group(1);
  }

  private Ran showing(String initials) {
    return Ran.of("key", "show", "--for", initials, "--book", book, "--keys", keys);
  }

  void close() {
    Ran.of("close", book.resolve(Tree.DAY)).expect(0);
  }

  Ran sign(String initials, Object... more) {
    List<Object> words = new ArrayList<>(List.of("sign", record, "--as", initials));
    words.addAll(List.of(more));
    return ran(words.toArray());
  }

  /** A record of the day, signed by both. */
  Path signedByBoth(String name) {
    Path pdf = record.resolveSibling(name);
    ran("sign", pdf, "--as", "MA").expect(0);
    ran("sign", pdf, "--as", "OR").expect(0);
    return pdf;
  }

  Smokeyard signedByBoth() {
    signedByBoth("26047-B1.pdf");
    return this;
  }

  /** With the folder of the keys and the passphrase. */
  Ran ran(Object... words) {
    return Ran.of(words(words));
  }

  Object[] words(Object... words) {
    List<Object> all = new ArrayList<>(List.of(words));
    all.addAll(List.of("--keys", keys, "--passphrase-file", passphrase));
    if (words[0].equals("sign")) {
      all.add("--yes");
    }
    return all.toArray();
  }

  /** Takes the record far from its book. */
  Path takenAway(Path folder) {
    Path away = folder.resolve("away.pdf");
    Tree.write(away, () -> Files.copy(record, away));
    return away;
  }
}
