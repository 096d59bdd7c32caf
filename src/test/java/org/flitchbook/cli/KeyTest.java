package org.flitchbook.cli;

import static org.flitchbook.OutsideProgram.ask;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.OutsideProgram;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.SigningKey;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Making, showing and retiring keys. */
final class KeyTest {

  private static final String PASSPHRASE = "smoke over the fen";
  private static final Pattern PRINT = Pattern.compile("fingerprint {2}([0-9a-f]{64})");

  /** A key of MA that is made once, since that takes long, for the tests that only need one. */
  @TempDir private static Path shared;

  private static Ran made;

  @TempDir private Path folder;
  private Path book;
  private Path plan;
  private Path keys;
  private Path word;

  @BeforeAll
  static void makeOnce() {
    Path first = shared.resolve("first");
    Tree.write(first.resolve("word"), PASSPHRASE + "\n");
    made = make("MA", Tree.example(first), first.resolve("keys"), first.resolve("word"));
    made.expect(0);
  }

  @BeforeEach
  void copy() {
    in(folder);
    Tree.example(folder);
    Tree.write(word, PASSPHRASE + "\n");
  }

  private void in(Path home) {
    book = home.resolve("book");
    plan = book.resolve("plan.json");
    keys = home.resolve("keys");
    word = home.resolve("word");
  }

  /** Goes on in a copy of where the key was made. */
  private Ran made() {
    in(Tree.copy(shared.resolve("first"), folder.resolve("made")));
    return made;
  }

  private static Ran make(String initials, Path book, Path keys, Path word, Object... more) {
    return Ran.of(words(initials, book, keys, word, more));
  }

  private static Object[] words(String initials, Path book, Path keys, Path word, Object... more) {
    Object[] words = {
      "key", "new", "--for", initials, "--book", book, "--keys", keys, "--passphrase-file", word
    };
    return Stream.of(words, more).flatMap(Arrays::stream).toArray();
  }

  private Ran make(Object... more) {
    return make("MA", book, keys, word, more);
  }

  private static String fingerprint(Ran ran) {
    Matcher print = PRINT.matcher(ran.out());
    assertTrue(print.find(), ran.out());
    return print.group(1);
  }

  @Test
  void a_key_is_on_an_elliptic_curve() {
    assertTrue(made.out().contains("kind         EC, 256 bits"), made.out());
  }

  /** In a machine with both compilers: the first alone is slow to find primes. */
  @Test
  void a_key_can_be_rsa_and_openssl_opens_it_and_verifies_what_it_signs() throws Exception {
    Object[] words = words("IQ", book, keys, word, "--rsa");
    Ran rsa = Child.elsewhere(List.of("-XX:+UseSerialGC"), words).expect(0);
    assertTrue(rsa.out().contains("kind         RSA, 3072 bits"), rsa.out());
    byte[] record = "26047-B1, met".getBytes(StandardCharsets.UTF_8);
    SigningKey key =
        Signing.open(Tree.bytes(keys.resolve("IQ.p12")), PASSPHRASE.toCharArray())
            .key()
            .orElseThrow();
    Path content = Files.write(folder.resolve("record"), record);
    Path signature = Files.write(folder.resolve("signature"), Signing.sign(record, key));
    OutsideProgram.verifyCades(signature, content, keys.resolve("IQ.pem"), folder);
    OutsideProgram.verifyCades(signature, content, certificateIn(keys.resolve("IQ.p12")), folder);
  }

  /** A key that the plan doesn't know, made once. */
  private static final class Alone {
    static final Path HOME = shared.resolve("alone");
    static final Ran MADE;

    static {
      Path word = HOME.resolve("word");
      Tree.write(word, PASSPHRASE + "\n");
      Path book = Tree.example(HOME);
      MADE = make("MA", book, HOME.resolve("keys"), word, "--leave-plan").expect(0);
    }
  }

  private void leaveAlone() {
    in(Tree.copy(Alone.HOME, folder.resolve("alone")));
  }

  @Test
  void a_key_can_leave_the_plan_alone_and_tell_its_line() {
    leaveAlone();
    String before = Tree.text(Tree.example(folder.resolve("before")).resolve("plan.json"));
    Ran made = Alone.MADE;
    String line = "    \"key\": \"" + fingerprint(made) + "\"\n";
    assertTrue(
        made.out()
            .endsWith("Add this to MA in " + Alone.HOME.resolve("book/plan.json") + ":\n" + line),
        made.out());
    assertEquals(before, Tree.text(plan));
    assertEquals(List.of("MA.p12", "MA.pem"), Tree.names(keys));
  }

  @Test
  void a_new_key_is_entered_and_changes_nothing_else_in_the_plan() {
    String before = Tree.text(plan);
    String entered = ", \"key\": \"" + fingerprint(made()) + "\"";
    assertEquals(before, Tree.text(plan).replace(entered, ""));
    Ran.of("plan", "check", book).expect(0);
  }

  @Test
  @DisabledOnOs(value = OS.WINDOWS, disabledReason = "it has other rights")
  void a_key_file_is_for_its_owner_alone() throws Exception {
    assertEquals("rw-------", rights(shared.resolve("first/keys/MA.p12")));
    assertEquals("rwx------", rights(shared.resolve("first/keys")));
  }

  private static String rights(Path file) throws Exception {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(file));
  }

  @Test
  void openssl_opens_the_key_file_and_finds_the_same_certificate() {
    String print = fingerprint(made());
    for (Path each : List.of(certificateIn(keys.resolve("MA.p12")), keys.resolve("MA.pem"))) {
      String said = ask("openssl", "x509", "-in", each, "-noout", "-fingerprint", "-sha256");
      assertTrue(said.replace(":", "").toLowerCase(Locale.ROOT).contains(print), said);
    }
  }

  private Path certificateIn(Path key) {
    Path certificate = folder.resolve("certificate");
    ask("openssl", "pkcs12", "-in", key, "-nokeys", "-passin", "file:" + word, "-out", certificate);
    return certificate;
  }

  @Test
  void the_passphrase_is_asked_for_twice_and_never_shown() throws Exception {
    Path script = OutsideProgram.find("script");
    Child child =
        Child.onTerminal(script, "key", "new", "--for", "MA", "--book", book, "--keys", keys);
    String said = child.answer("Passphrase for the key of MA: ", "juniper and treacle");
    said += child.answer("Once more: ", "juniper and treacle");
    Ran ran = child.ended().expect(0);
    assertFalse((said + ran.out()).contains("juniper"), said + ran.out());
    assertTrue(ran.out().contains("A key of Maud Achterberg (MA) was made."), ran.out());
  }

  @Test
  void where_the_launcher_cannot_tell_java_finds_the_terminal() throws Exception {
    Path script = OutsideProgram.find("script");
    List<String> ofWindows = List.of("-Djdk.console=java.base", "-Dflitchbook.asks=console");
    Object[] words = {"key", "new", "--for", "MA", "--book", book, "--keys", keys};
    Ran alone = Child.elsewhere(ofWindows, words).expect(2);
    assertTrue(alone.out().contains("no terminal to ask for the passphrase"), alone.out());
    Child child = Child.onTerminal(script, ofWindows, words);
    child.answer("Passphrase for the key of MA: ", "juniper and treacle");
    child.answer("Once more: ", "juniper and treacle");
    child.ended().expect(0);
  }

  @Test
  void the_launcher_of_windows_leaves_it_to_java() throws Exception {
    String launcher = Files.readString(Path.of("flitchbook.cmd"));
    assertTrue(launcher.contains("-Djdk.console=java.base -Dflitchbook.asks=console"), launcher);
  }

  @Test
  void two_passphrases_that_differ_make_no_key() throws Exception {
    Path script = OutsideProgram.find("script");
    Child child =
        Child.onTerminal(script, "key", "new", "--for", "MA", "--book", book, "--keys", keys);
    child.answer("Passphrase for the key of MA: ", "juniper and treacle");
    child.answer("Once more: ", "juniper and treacles");
    Ran ran = child.ended().expect(2);
    assertTrue(ran.out().contains("the two passphrases differ"), ran.out());
    assertFalse(Files.exists(keys));
  }

  @Test
  void a_variable_that_the_user_names_holds_the_passphrase() {
    Ran ran =
        Ran.of(
                "key",
                "new",
                "--for",
                "MA",
                "--book",
                book,
                "--keys",
                keys,
                "--passphrase-env",
                "NO_SUCH_VARIABLE_HERE")
            .expect(2);
    assertTrue(
        ran.err().startsWith("flitchbook: there is no variable NO_SUCH_VARIABLE_HERE"), ran.err());
  }

  @Test
  void without_a_terminal_nobody_is_asked() {
    Ran ran = Ran.of("key", "new", "--for", "MA", "--book", book, "--keys", keys).expect(2);
    assertTrue(
        ran.err().startsWith("flitchbook: no terminal to ask for the passphrase"), ran.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"--passphrase", "--password", "--passin"})
  void no_option_takes_the_passphrase_itself(String option) {
    make(option, "smoke over the fen").expect(2);
    assertFalse(Files.exists(keys));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          treacle             | a passphrase has at least 10 characters
          treaclé and juniper | a passphrase has letters without accents, digits, signs and spaces
          """)
  void a_passphrase_that_will_not_do_is_refused(String passphrase, String why) throws Exception {
    Files.writeString(word, passphrase + "\n");
    Ran ran = make().expect(2);
    assertTrue(ran.err().startsWith("flitchbook: " + why), ran.err());
    assertFalse(ran.err().contains(passphrase));
  }

  @Test
  void keys_do_not_lie_in_the_book() {
    Ran ran = make("MA", book, book.resolve("keys"), word).expect(2);
    assertTrue(ran.err().contains("lies in the book; keys must not travel with it"), ran.err());
  }

  @Test
  void a_stranger_gets_no_key() {
    Ran ran = make("ZZ", book, keys, word).expect(2);
    assertEquals("flitchbook: \"ZZ\" is nobody in the plan; it has MA, IQ\n", ran.err());
  }

  @Test
  void a_second_key_is_made_only_once_the_first_is_retired() {
    String first = fingerprint(made());
    assertTrue(make().expect(2).err().contains("retire it before a new one is made"));
    Ran retired = retire().expect(0);
    assertTrue(retired.out().contains("MA-" + first.substring(0, 8) + "-retired.p12"));
    String second = fingerprint(make().expect(0));
    String text = Tree.text(plan);
    assertAll(
        () ->
            assertTrue(
                text.contains(
                    "\"keys\": [{\"fingerprint\": \"" + first + "\", \"until\": \"2026-02-24\"}]"),
                text),
        () -> assertTrue(text.contains("\"key\": \"" + second + "\""), text));
    Ran.of("plan", "check", book).expect(0);
  }

  private Ran retire() {
    return Ran.of(
        "key", "retire", "--for", "MA", "--book", book, "--keys", keys, "--on", "2026-02-24");
  }

  @Test
  void a_key_that_is_lost_can_be_retired() throws Exception {
    made();
    Files.delete(keys.resolve("MA.p12"));
    Files.delete(keys.resolve("MA.pem"));
    retire().expect(0);
  }

  @Test
  void a_person_without_a_key_has_none_to_retire() {
    assertEquals("flitchbook: MA has no key in use in the plan\n", retire().expect(2).err());
  }

  @Test
  void showing_a_key_says_whether_the_plan_knows_it() {
    leaveAlone();
    assertTrue(show().expect(0).out().contains("The plan doesn't know it. Add this to MA"));
    Tree.edit(
        plan,
        "\"roles\": [\"maker\"]}",
        "\"roles\": [\"maker\"], \"key\": \"" + fingerprint(show()) + "\"}");
    assertTrue(show().expect(0).out().endsWith("The plan knows it.\n"));
    retire().expect(0);
    assertTrue(show().expect(0).out().endsWith("as retired: it counts until 2026-02-24.\n"));
  }

  private Ran show() {
    return Ran.of("key", "show", "--for", "MA", "--book", book, "--keys", keys);
  }

  @Test
  void a_plan_with_faults_gets_no_key() {
    Tree.edit(plan, "\"regime\"", "\"regimen\"");
    make().expect(3);
    assertFalse(Files.exists(keys));
  }
}
