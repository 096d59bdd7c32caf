package org.flitchbook.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

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
  private final Path passphrase;

  Smokeyard(Path folder) {
    book = Tree.example(folder);
    Tree.edit(book.resolve("plan.json"), "\"people\": [", "\"people\": [" + REVIEWER);
    keys = folder.resolve("keys");
    record = book.resolve(RECORD);
    passphrase = folder.resolve("passphrase");
    Tree.write(passphrase, () -> Files.writeString(passphrase, PASSPHRASE));
  }

  /** With keys of both in the plan, and the day closed. */
  static Smokeyard closed(Path folder) {
    Smokeyard yard = new Smokeyard(folder);
    yard.key("MA");
    yard.key("OR");
    yard.close();
    return yard;
  }

  /** Makes a key, enters it in the plan and gives its fingerprint. */
  String key(String initials) {
    Ran made = ran("key", "new", "--for", initials, "--book", book).expect(0);
    Matcher print = PRINT.matcher(made.out());
    if (!print.find()) {
      throw new AssertionError(made.out());
    }
    return print.group(1);
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
  Path signed(String name) {
    Path pdf = record.resolveSibling(name);
    ran("sign", pdf, "--as", "MA").expect(0);
    ran("sign", pdf, "--as", "OR").expect(0);
    return pdf;
  }

  Smokeyard signedByBoth() {
    sign("MA").expect(0);
    sign("OR").expect(0);
    return this;
  }

  /** With the folder of the keys and the passphrase. */
  Ran ran(Object... words) {
    return Ran.of(words(words));
  }

  Object[] words(Object... words) {
    List<Object> all = new ArrayList<>(List.of(words));
    all.addAll(List.of("--keys", keys, "--passphrase-file", passphrase));
    return all.toArray();
  }

  /** Takes the record far from its book. */
  Path takenAway(Path folder) {
    Path away = folder.resolve("away.pdf");
    Tree.write(away, () -> Files.copy(record, away));
    return away;
  }
}
