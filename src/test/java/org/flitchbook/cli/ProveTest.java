package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.proving.Proving;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What one record proves, beside its book and far from it. */
final class ProveTest {

  private static final long SEED = 3;
  private static final String CURE = "2026-02-16/cure.csv";
  private static final String NITRITE = "us.424.22-b-3.nitrite";

  private static final Proving.Request AS_IT_IS =
      new Proving.Request(Optional.empty(), List.of(), List.of(), List.of());

  @TempDir private static Path shared;
  private static Smokeyard yard;
  private static byte[] unsigned;
  private static byte[] once;
  private static byte[] twice;

  @TempDir private Path folder;

  @BeforeAll
  static void sign() {
    yard = Smokeyard.closed(shared);
    unsigned = Tree.bytes(yard.record);
    yard.sign("MA").expect(0);
    once = Tree.bytes(yard.record);
    yard.sign("OR").expect(0);
    twice = Tree.bytes(yard.record);
  }

  /** A record far from its book. */
  private Path away(byte[] pdf) {
    Path file = folder.resolve("away.pdf");
    Tree.write(file, () -> Files.write(file, pdf));
    return file;
  }

  private Ran prove(byte[] pdf, Object... more) {
    Path file = away(pdf);
    return Ran.of(Stream.concat(Stream.of("prove", file), Stream.of(more)).toArray());
  }

  private static void says(Ran ran, String... sentences) {
    for (String each : sentences) {
      assertTrue(ran.flat().contains(each), () -> each + " is not in\n" + ran.out());
    }
  }

  @Test
  void a_signed_record_beside_its_book_is_proved_by_the_keys_of_the_plan() {
    Ran ran = Ran.of("prove", yard.record).expect(0);
    says(
        ran,
        "No sign of a change.",
        "✓ Signed in \"prepared\" by Maud Achterberg as maker, ",
        "has as MA's, Maud Achterberg.",
        "✓ Signed in \"reviewed\" by Odo Rivett as reviewer, ",
        "✓ Nothing was added since it was printed but its signatures.",
        "✓ The 22 files that it carries are those that its pages list by SHA-256.",
        "✓ Judged again from what it carries, all 13 findings are the same.",
        "✓ It is the one that the ledger of its book lists.",
        "– The time in \"prepared\" is that of the signer's own clock.",
        "– That what was written down is true, no signature proves");
  }

  /** A true print, and not the one that was signed and told of. */
  @Test
  void a_record_put_in_the_place_of_the_signed_one_is_noticed_beside_its_book() {
    Path book = Tree.copy(yard.book, folder.resolve("book"));
    Path record = book.resolve(Smokeyard.RECORD);
    Tree.write(record, () -> Files.write(record, unsigned));
    says(
        Ran.of("prove", record).expect(1),
        "✗ It is not the one that the ledger of its book lists.");
  }

  @Test
  void far_from_its_book_the_signer_is_not_confirmed_until_a_fingerprint_is_given() {
    says(
        prove(twice).expect(0),
        "– The signer is not confirmed: the key " + yard.fingerprint("MA"),
        "– The signer is not confirmed: the key " + yard.fingerprint("OR"));
    Object[] prints = {
      "--fingerprint", yard.fingerprint("MA"), "--fingerprint", yard.fingerprint("OR")
    };
    says(prove(twice, prints).expect(0), "✓ It was made with the key that you named");
    says(
        prove(twice, "--plan", yard.book).expect(0),
        "✓ It was made with the key that " + yard.book.resolve("plan.json") + " has as OR's");
  }

  @Test
  void a_record_that_nobody_signed_says_so() {
    says(prove(unsigned).expect(0), "– Nobody has signed it");
  }

  @Test
  void programs_get_one_document() {
    JsonNode json = prove(twice, "--json").expect(0).json();
    assertAll(
        () -> assertEquals("record", json.get("proves").asText()),
        () -> assertTrue(json.get("untouched").asBoolean()),
        () -> assertEquals(13, json.get("findings").get("compared").asInt()),
        () -> assertEquals(0, json.get("findings").get("differences").size()),
        () -> assertEquals("maker", json.get("signatures").get(0).get("role").asText()),
        () -> assertTrue(json.get("signatures").get(1).get("valid").asBoolean()),
        () ->
            assertEquals(
                List.of("proved", "not proved"),
                json.get("statements").findValuesAsText("standing").stream().distinct().toList()));
  }

  /** The same people and another key each: only the fingerprint tells. */
  @Test
  void a_record_signed_with_another_key_of_the_same_name_is_noticed() {
    Smokeyard other = Smokeyard.made(folder.resolve("other")).signedByBoth();
    byte[] forged = Tree.bytes(other.record);
    says(prove(forged).expect(0), "Maud Achterberg", "– The signer is not confirmed");
    says(
        prove(forged, "--fingerprint", yard.fingerprint("MA")).expect(1),
        "NOT AS IT WAS.",
        "✗ The signature in \"prepared\" was made with a key that is not known",
        "✗ No valid signature in it was made with the key that you named");
    says(
        prove(forged, "--plan", yard.book).expect(1),
        "✗ The signature in \"reviewed\" was made with a key that is not known");
  }

  @Test
  void a_key_that_was_retired_before_does_not_count() throws Exception {
    Path plan = Files.copy(yard.book.resolve("plan.json"), folder.resolve("plan.json"));
    Path none = folder.resolve("keys");
    Ran.of("key", "retire", "--for", "MA", "--book", folder, "--keys", none, "--on", "2026-02-24")
        .expect(0);
    says(
        prove(twice, "--plan", plan).expect(1),
        "on a day on which it did not count: it is retired since 2026-02-24.");
  }

  /** Both signatures of such a file are valid: the change came before the second. */
  private record Shadow(String name, Forger.Deed deed, String said) {}

  @TestFactory
  Stream<DynamicTest> a_change_between_two_signatures_is_noticed() {
    return Stream.of(
            new Shadow("a page", Forger::blankPage, "✗ Page 2 was changed before the signature"),
            new Shadow(
                "the look of the first signature",
                Forger::blankSignature,
                "✗ Page 1 was changed before the signature"),
            new Shadow(
                "an attachment",
                Forger.swapping(CURE, "11.5", "10.5"),
                "✗ The attachment 2026-02-16_cure.csv was changed"))
        .map(each -> DynamicTest.dynamicTest(each.name(), () -> shadowed(each)));
  }

  private void shadowed(Shadow shadow) {
    byte[] changed = Forger.added(once, shadow.deed());
    byte[] pdf = Forger.signed(changed, "reviewed", yard.keys, "OR");
    Ran ran = prove(pdf, "--plan", yard.book).expect(1);
    says(ran, "NOT AS IT WAS.", "✗ It was saved 4 times, and signed 2 times.", shadow.said());
    Ran refused = yard.ran("sign", away(changed), "--as", "OR").expect(2);
    assertTrue(refused.err().contains("was changed after it was printed"), refused.err());
  }

  @Test
  void a_digit_of_a_sheet_in_a_record_makes_a_finding_no_longer_follow() {
    byte[] forged = Forger.rewritten(unsigned, Forger.swapping(CURE, "11.5", "12.5"));
    Ran ran = prove(forged).expect(1);
    says(
        ran,
        "✗ The enclosed " + CURE + " is not the one that the pages list.",
        "✗ No longer follows: lot 26047-B1, "
            + NITRITE
            + ": the record says met, 149.366168 ppm, and"
            + " what it carries gives met, 162.35453 ppm.");
    JsonNode differences =
        prove(forged, "--json").expect(1).json().get("findings").get("differences");
    assertTrue(differences.findValuesAsText("limit").contains(NITRITE), differences.toString());
  }

  @Test
  void an_attachment_swapped_in_a_signed_record_is_noticed() {
    byte[] forged = Forger.rewritten(twice, Forger.swapping(CURE, "11.5", "12.5"));
    says(prove(forged).expect(1), "is not valid", "✗ No longer follows: lot 26047-B1, " + NITRITE);
  }

  @Test
  void another_version_of_the_program_says_which_made_the_record() {
    Session newer = new Session(told -> {}, Clock.systemUTC(), asked -> Optional.empty(), "9.9.9");
    JobResult result = Proving.prove(newer, away(twice), AS_IT_IS);
    assertEquals(ExitStatus.WELL, result.status());
    says(
        new Ran(0, result.text(), ""),
        "✓ Judged again from what it carries, all 13 findings are the same. It was made by version"
            + " 0.2.0 of the program, and judged again by version 9.9.9.",
        "No sign of a change, but its pages were not compared.",
        "– Its pages were printed by version 0.2.0 of the program, and were not compared.");
  }

  /** Readers of PDF may see different pages in a file that was saved by another program. */
  @Test
  void a_print_saved_again_is_noticed() {
    byte[] saved = Forger.rewritten(unsigned, file -> {});
    says(
        prove(saved).expect(1),
        "✗ Printed again from what it carries, it is another in: the way in which it was saved.");
    says(
        new Ran(0, yard.ran("sign", away(saved), "--as", "MA", "--book", yard.book).err(), ""),
        "is not what its own evidence prints, and is not signed");
  }

  /** Another Java may pack streams otherwise; one byte more or another place is no packing. */
  @Test
  void a_print_that_another_java_packs_is_the_same() throws Exception {
    for (int level : new int[] {0, 1, 6, 9}) {
      says(prove(Repack.at(unsigned, level)).expect(0), "✓ Printed again from what it carries");
    }
    byte[] repacked = Repack.at(unsigned, 1);
    String all = new String(repacked, ISO_8859_1);
    for (String broken :
        List.of(
            all.replaceFirst("/ID \\[<..", "/ID [<00"),
            all.replaceFirst("\nendobj", "\n%%%%%%\nendobj"),
            all.replaceFirst("\nendobj", " \nendobj"),
            all.replaceFirst("%PDF-1.7", "%PDF-1.6"))) {
      assertNotEquals(all, broken);
      assertTrue(prove(broken.getBytes(ISO_8859_1)).status() != 0, "a broken one");
    }
  }

  /** Who calls a record older than it is can't keep its pages from being compared unseen. */
  @ParameterizedTest
  @ValueSource(strings = {"", "0.1.0", "none"})
  void a_record_that_misstates_its_version_is_noticed(String version) {
    byte[] misstated =
        Forger.rewritten(
            unsigned,
            Forger.swapping(
                "findings/26047-B1.json",
                "\"tool\" : \"0.2.0\"",
                "\"tool\" : \"" + version + "\""));
    says(
        prove(misstated).expect(1),
        "NOT AS IT WAS.",
        "✗ It does not say rightly which version of the program made it.");
  }

  /** A roll-back to the print, or to the first signature, is a file that is whole in itself. */
  @Test
  void signatures_that_must_be_there_are_asked_for() {
    says(
        prove(unsigned, "--signed-by", "maker,reviewer").expect(1),
        "NOT COMPLETE. No sign of a change.",
        "✗ It must be signed by a maker, and has no such signature.",
        "✗ It must be signed by a reviewer, and has no such signature.");
    says(
        prove(once, "--signed-by", "maker,reviewer").expect(1),
        "✗ It must be signed by a reviewer, and has no such signature.");
    says(prove(twice, "--signed-by", "maker,reviewer").expect(0), "No sign of a change.");
    says(
        new Ran(0, prove(once, "--signed-by", "owner").expect(2).err(), ""),
        "\"owner\" is neither maker nor reviewer");
  }

  @Test
  void the_plan_can_ask_for_signatures() {
    Path plan = folder.resolve("plan.json");
    Tree.write(plan, () -> Files.copy(yard.book.resolve("plan.json"), plan));
    Tree.edit(plan, "\"establishment\": {", "\"establishment\": {\"signatures\": [\"reviewer\"],");
    says(
        prove(once, "--plan", plan).expect(1),
        "✗ It must be signed by a reviewer, and has no such signature.");
    prove(twice, "--plan", plan).expect(0);
    says(
        Ran.of("prove", yard.book, "--signed-by", "reviewer").expect(1),
        "NOT COMPLETE. No sign of a change.",
        "✗ records: 2 records must be signed by a reviewer, and have no such signature; the first"
            + " is records/2026-02-24/r1/day.pdf.");
  }

  @Test
  void what_cannot_be_read_is_told_with_status_3() {
    prove(new byte[] {1, 2, 3}).expect(3);
    Path plan = folder.resolve("plan.json");
    Tree.write(plan, () -> Files.writeString(plan, "{"));
    prove(twice, "--plan", plan).expect(3);
  }

  @Test
  void what_is_not_there_is_wrong_use() {
    Ran.of("prove", folder.resolve("none.pdf")).expect(2);
    prove(twice, "--fingerprint", "12").expect(2);
  }

  @TestFactory
  Stream<DynamicTest> every_record_of_the_demo_agrees_on_every_finding() {
    return DemoDay.someRecords("Proved", SEED).stream()
        .map(
            pdf ->
                DynamicTest.dynamicTest(
                    DemoDay.dayOf(pdf) + " " + pdf.getFileName(), () -> agrees(pdf)));
  }

  private static void agrees(Path pdf) {
    JsonNode json = Ran.of("prove", pdf, "--json").expect(0).json();
    assertEquals(0, json.get("findings").get("differences").size());
    Path found = pdf.resolveSibling(pdf.getFileName().toString().replace(".pdf", ".json"));
    int findings = 0;
    for (JsonNode lot : Ran.json(Tree.text(found)).get("lots")) {
      findings += lot.get("findings").size();
    }
    assertEquals(findings, json.get("findings").get("compared").asInt());
  }
}
