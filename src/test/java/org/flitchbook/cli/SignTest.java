package org.flitchbook.cli;

import static org.flitchbook.OutsideProgram.ask;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.sun.net.httpserver.HttpServer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import org.apache.pdfbox.Loader;
import org.flitchbook.OutsideProgram;
import org.flitchbook.input.SourceFile;
import org.flitchbook.sign.StampServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Signing records: who may, in which box, and what the ledger is told. */
final class SignTest {

  @TempDir private Path folder;
  private Smokeyard yard;

  @BeforeEach
  void close() {
    yard = Smokeyard.closed(folder);
  }

  private JsonNode lastLine() {
    String[] lines = Tree.text(yard.book.resolve("ledger.jsonl")).split("\n", -1);
    return Ran.json(lines[lines.length - 2]);
  }

  @Test
  void the_maker_signs_and_the_ledger_is_told() {
    byte[] before = Tree.bytes(yard.record);
    Ran signed = yard.sign("MA", "--reason", "checked against the sheets").expect(0);
    byte[] after = Tree.bytes(yard.record);
    assertArrayEquals(before, Arrays.copyOf(after, before.length));
    JsonNode line = lastLine();
    assertEquals("signed", line.get("event").asText());
    assertEquals("26047-B1.pdf", line.get("about").asText());
    assertEquals("MA", line.get("by").asText());
    assertEquals("checked against the sheets", line.get("reason").asText());
    assertEquals("prepared", line.get("facts").get("box").asText());
    assertEquals(
        SourceFile.of("", before).sha256(), line.get("inputs").get(Smokeyard.RECORD).asText());
    assertEquals(
        SourceFile.of("", after).sha256(), line.get("outputs").get(Smokeyard.RECORD).asText());
    assertTrue(signed.out().contains(line.get("hash").asText()), signed.out());
  }

  @Test
  void pdfsig_calls_every_signature_valid() {
    yard = Smokeyard.signed(folder.resolve("signed"));
    String said = ask("pdfsig", yard.record);
    assertEquals(2, said.split("Signature is Valid", -1).length - 1, said);
    assertTrue(said.contains("Maud Achterberg") && said.contains("Odo Rivett"), said);
    assertEquals(2, said.split("ETSI.CAdES.detached", -1).length - 1, said);
    assertTrue(said.contains("- Total document signed"), said);
  }

  @Test
  void the_box_shows_who_signed_as_what_and_when() {
    yard = Smokeyard.signed(folder.resolve("signed"));
    String text = ask("pdftotext", "-enc", "UTF-8", "-l", "1", yard.record, "-");
    assertTrue(text.contains("Signed: Maud Achterberg (MA), maker"), text);
    assertTrue(text.contains("Signed: Odo Rivett (OR), reviewer"), text);
    assertTrue(
        text.matches(
            "(?s).*\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d:\\d\\d -0[45]:00 \\(America/New_York\\).*"),
        text);
    assertTrue(
        text.matches("(?s).*[0-9a-f]{4} [0-9a-f]{4} [0-9a-f]{4} [0-9a-f]{4}; ledger \\d+, .*"),
        text);
  }

  @Test
  void qpdf_finds_a_signed_record_sound() {
    yard = Smokeyard.signed(folder.resolve("signed"));
    String said = ask("qpdf", "--check", yard.record);
    assertTrue(said.contains("No syntax or stream encoding errors found"), said);
  }

  @Test
  void openssl_verifies_the_signature_taken_out() throws Exception {
    yard.sign("MA").expect(0);
    byte[] pdf = Tree.bytes(yard.record);
    try (var file = Loader.loadPDF(pdf)) {
      var signature = file.getLastSignatureDictionary();
      Path seal = Files.write(folder.resolve("seal"), signature.getContents(pdf));
      Path covered = Files.write(folder.resolve("covered"), signature.getSignedContent(pdf));
      OutsideProgram.verifyCades(seal, covered, yard.keys.resolve("MA.pem"), folder);
    }
  }

  @Test
  void the_reviewer_signs_after_the_maker() {
    Ran early = yard.sign("OR", "--role", "reviewer").expect(2);
    assertEquals("flitchbook: the maker signs first, and the reviewer after\n", early.err());
  }

  @Test
  void each_box_is_signed_once() {
    yard = Smokeyard.signed(folder.resolve("signed"));
    assertTrue(yard.sign("OR").expect(2).err().contains("no box of this record is open to OR"));
    assertTrue(yard.sign("MA", "--role", "maker").expect(2).err().contains("is signed already"));
  }

  @Test
  void the_plan_says_who_may_sign_as_what() {
    assertTrue(yard.sign("ZZ").expect(2).err().contains("\"ZZ\" is nobody in the plan"));
    yard.sign("MA").expect(0);
    Ran ran = yard.sign("MA", "--role", "reviewer").expect(2);
    assertEquals("flitchbook: the plan does not have MA as a reviewer\n", ran.err());
  }

  @Test
  void a_reviewer_with_entries_in_the_lot_is_refused() {
    yard.key("IQ");
    yard.sign("MA").expect(0);
    Ran refused = yard.sign("IQ").expect(2);
    assertTrue(refused.err().contains("IQ has entries in lot 26047-B1"), refused.err());
  }

  @Test
  void who_works_alone_reviews_and_the_page_says_so() {
    Path plan = yard.book.resolve("plan.json");
    Tree.edit(plan, "\"establishment\": {", "\"establishment\": {\"soleOperator\": true,");
    Tree.edit(plan, "\"roles\": [\"maker\"]", "\"roles\": [\"maker\", \"reviewer\"]");
    Ran.of("close", yard.book.resolve(Tree.DAY), "--as", "MA", "--reason", "alone").expect(0);
    Path again = yard.book.resolve("records/2026-02-24/r2/26047-B1.pdf");
    yard.ran("sign", again, "--as", "MA").expect(0);
    yard.ran("sign", again, "--as", "MA").expect(0);
    String text = ask("pdftotext", "-enc", "UTF-8", "-l", "1", again, "-");
    assertTrue(text.contains("Sole operator: maker and reviewer are one person"), text);
  }

  @Test
  void a_revision_that_was_followed_by_another_is_not_signed() {
    Tree.edit(yard.book.resolve("2026-02-24/chill.csv"), "4222", "4223");
    Ran.of("close", yard.book.resolve(Tree.DAY), "--as", "MA", "--reason", "typed wrong").expect(0);
    Ran refused = yard.sign("MA").expect(2);
    assertTrue(refused.err().contains("is not of that day's last revision"), refused.err());
  }

  @Test
  void signatures_belong_to_a_revision() {
    yard = Smokeyard.signed(folder.resolve("signed"));
    assertTrue(
        Ran.of("close", yard.book.resolve(Tree.DAY)).expect(0).out().contains("Nothing new"));
    byte[] first = Tree.bytes(yard.record);
    Tree.edit(yard.book.resolve(Tree.DAY).resolve("chill.csv"), "4222", "4223");
    Ran.of("close", yard.book.resolve(Tree.DAY), "--as", "MA", "--reason", "read again").expect(0);
    assertArrayEquals(first, Tree.bytes(yard.record));
    Path second = yard.book.resolve(Smokeyard.RECORD.replace("/r1/", "/r2/"));
    assertEquals(0, Ran.of("prove", second, "--json").expect(0).json().get("signatures").size());
    assertEquals(
        2, Ran.of("prove", yard.record, "--json").expect(0).json().get("signatures").size());
    Ran.of("prove", yard.book).expect(0);
  }

  @Test
  void a_record_that_is_not_as_the_ledger_tells_is_not_signed() throws Exception {
    byte[] pdf = Tree.bytes(yard.record);
    pdf[pdf.length / 2] ^= 1;
    Files.write(yard.record, pdf);
    yard.sign("MA").expect(2);
    assertArrayEquals(pdf, Tree.bytes(yard.record));
  }

  @Test
  void a_key_that_the_plan_does_not_have_signs_nothing() {
    Tree.edit(
        yard.book.resolve("plan.json"),
        ", \"key\": \"",
        ", \"keys\": [], \"key\": \"0123456789abcdef");
    yard.sign("MA").expect(3);
    Path plan = yard.book.resolve("plan.json");
    Tree.write(
        plan,
        () ->
            Files.writeString(
                plan,
                Tree.text(plan).replaceAll(", \"keys\": \\[\\], \"key\": \"[0-9a-f]+\"", "")));
    Ran refused = yard.sign("MA").expect(2);
    assertTrue(refused.err().contains("the plan does not have the key"), refused.err());
  }

  @Test
  void files_of_secrets_that_others_can_read_are_told() throws Exception {
    Smokeyard yard = Smokeyard.closed(folder.resolve("open"));
    Path key = yard.keys.resolve("MA.p12");
    String others =
        " can be read or changed by others on this computer; chmod 600 keeps it to you\n";
    Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-r-----"));
    Files.setPosixFilePermissions(yard.passphrase, PosixFilePermissions.fromString("rw----r--"));
    String said = yard.sign("MA").expect(0).err();
    assertTrue(said.contains(key + others), said);
    assertTrue(said.contains(yard.passphrase + others), said);
    assertTrue(said.contains(key + ": it is closed with 10 rounds"), said);
    Files.setPosixFilePermissions(
        yard.keys.resolve("OR.p12"), PosixFilePermissions.fromString("rw-------"));
    Files.setPosixFilePermissions(yard.passphrase, PosixFilePermissions.fromString("rw-------"));
    assertFalse(yard.sign("OR").expect(0).err().contains(others));
  }

  @Test
  void a_wrong_passphrase_signs_nothing() {
    Path wrong = folder.resolve("wrong");
    Tree.write(wrong, () -> Files.writeString(wrong, "smoke over the fern"));
    Ran refused =
        Ran.of(
                "sign",
                yard.record,
                "--yes",
                "--as",
                "MA",
                "--keys",
                yard.keys,
                "--passphrase-file",
                wrong)
            .expect(2);
    assertTrue(refused.err().contains("the passphrase does not open it"), refused.err());
  }

  @Test
  void the_passphrase_is_asked_for_at_the_terminal_and_never_shown() throws Exception {
    Path script = OutsideProgram.find("script");
    Child child = Child.onTerminal(script, "sign", yard.record, "--as", "MA", "--keys", yard.keys);
    String said = child.answer("Sign it? yes or no: ", "yes");
    said += child.answer("Passphrase for the key of MA: ", Smokeyard.PASSPHRASE);
    Ran ran = child.ended().expect(0);
    assertTrue(ran.out().contains("is signed."), ran.out());
    assertFalse((said + ran.out()).contains(Smokeyard.PASSPHRASE), said + ran.out());
  }

  @Test
  void a_long_reason_does_not_fit_its_box() {
    yard.sign("MA", "--reason", "x".repeat(61)).expect(2);
  }

  @Test
  void what_is_no_pdf_is_not_signed() {
    Path other = yard.book.resolve("plan.json");
    yard.ran("sign", other, "--as", "MA").expect(3);
  }

  @Test
  void a_record_far_from_its_book_is_signed_by_the_plan_that_it_carries() {
    Path away = yard.takenAway(folder);
    yard.ran("sign", away, "--as", "MA").expect(0);
    String said = ask("pdfsig", away);
    assertTrue(said.contains("Signature is Valid"), said);
  }

  @Test
  void a_signature_that_was_cut_off_before_its_line_gets_it_with_the_next_job() {
    byte[] before = Tree.bytes(yard.book.resolve("ledger.jsonl"));
    yard.sign("MA").expect(0);
    Tree.write(yard.book, () -> Files.write(yard.book.resolve("ledger.jsonl"), before));
    Ran next = yard.sign("OR").expect(0);
    assertTrue(next.out().contains("A signature of MA in " + Smokeyard.RECORD), next.out());
    Ran.of("prove", yard.book).expect(0);
  }

  private Ran stamped(UnaryOperator<byte[]> bent, Object... more) throws Exception {
    HttpServer server = new StampServer(Instant.parse("2026-11-25T20:00:00Z")).listen(bent);
    try {
      String address = "http://127.0.0.1:" + server.getAddress().getPort() + "/";
      Tree.edit(
          yard.book.resolve("plan.json"),
          "\"establishment\": {",
          "\"establishment\": {\"timestampUrl\": \"" + address + "\",");
      return yard.sign("MA", more);
    } finally {
      server.stop(0);
    }
  }

  @Test
  void a_time_stamp_is_asked_for_where_the_plan_names_a_server() throws Exception {
    Ran signed = stamped(answer -> answer).expect(0);
    assertTrue(signed.out().contains("with a time stamp"), signed.out());
    Ran proved = Ran.of("prove", yard.record).expect(0);
    assertTrue(proved.out().contains("was there at 2026-11-25T20:00:00Z"), proved.out());
    assertTrue(ask("pdfsig", yard.record).contains("Signature is Valid"));
  }

  @Test
  void without_an_answer_nothing_is_signed_unless_that_is_asked_for() throws Exception {
    byte[] before = Tree.bytes(yard.record);
    Ran refused = stamped(answer -> new byte[] {1}).expect(2);
    assertTrue(refused.err().contains("sign with --without-timestamp"), refused.err());
    assertArrayEquals(before, Tree.bytes(yard.record));
    assertTrue(yard.sign("MA").expect(2).err().contains("it can't be reached"));
    yard.sign("MA", "--without-timestamp").expect(0);
  }

  @Test
  void the_day_sheet_and_the_report_are_signed_in_their_own_boxes() {
    for (String name : List.of("day", "deviations")) {
      Path pdf = yard.record.resolveSibling(name + ".pdf");
      yard.ran("sign", pdf, "--as", "MA").expect(0);
      yard.ran("sign", pdf, "--as", "OR").expect(0);
      Ran.of("prove", pdf).expect(0);
    }
  }
}
