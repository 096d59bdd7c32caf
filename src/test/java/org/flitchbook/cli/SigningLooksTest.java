package org.flitchbook.cli;

import static org.flitchbook.OutsideProgram.ask;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.signing.RecordSigning;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What somebody is shown before they sign, what they are asked, and who may review what. */
final class SigningLooksTest {

  private static final String SHOWN =
      """
      26047-B1.pdf says:
          26047-B1, Juniper & treacle belly bacon: met
              open: nothing
          entries initialled: MA 47, IQ 12
      Maud Achterberg signs as maker, in the box "prepared".
      """;

  @TempDir private Path folder;
  private Smokeyard yard;

  @BeforeEach
  void close() {
    yard = Smokeyard.closed(folder);
  }

  private Ran asked(String answers) {
    return Ran.asked(
        answers,
        "sign",
        yard.record,
        "--as",
        "MA",
        "--keys",
        yard.keys,
        "--passphrase-file",
        yard.passphrase);
  }

  private static void says(String text, String sentence) {
    assertTrue(text.contains(sentence), () -> sentence + " is not in\n" + text);
  }

  @Test
  void it_shows_lot_verdict_what_is_open_and_whose_entries_and_asks() {
    Ran ran = asked("yes\n").expect(0);
    says(ran.err(), SHOWN + "Sign it? yes or no: ");
    says(ran.out(), "is signed.");
  }

  @ParameterizedTest
  @ValueSource(strings = {"no", "", "y", "n", "yess", "YES NO"})
  void without_a_yes_nothing_is_signed(String answer) {
    byte[] before = Tree.bytes(yard.record);
    says(asked(answer + "\n").expect(2).err(), "the answer was not yes: nothing was signed");
    assertArrayEquals(before, Tree.bytes(yard.record));
  }

  @ParameterizedTest
  @CsvSource({"' Yes ', 0", "YES, 0", "sí, 2"})
  void yes_is_yes_in_the_language_of_the_plan(String answer, int status) {
    asked(answer + "\n").expect(status);
  }

  @ParameterizedTest
  @CsvSource({"sí, 0", "Si, 0", "yes, 2", "no, 2"})
  void yes_is_yes_in_spanish(String answer, int status) {
    Tree.edit(
        yard.book.resolve("plan.json"),
        "\"temperature\":",
        "\"language\": \"es\", \"temperature\":");
    says(asked(answer + "\n").expect(status).err(), "¿Firmar? sí o no: ");
  }

  @Test
  void in_a_pipe_it_is_shown_and_refused_and_yes_is_said_beforehand() {
    byte[] before = Tree.bytes(yard.record);
    Ran refused =
        Ran.of(
                "sign",
                yard.record,
                "--as",
                "MA",
                "--keys",
                yard.keys,
                "--passphrase-file",
                yard.passphrase)
            .expect(2);
    says(refused.err(), "nobody is here to say yes to this; --yes says it");
    says(refused.err(), SHOWN);
    assertArrayEquals(before, Tree.bytes(yard.record));
    says(yard.sign("MA").expect(0).out(), SHOWN);
  }

  /** Too much curing salt, and what was done about it. */
  private Path closedWithTooMuchCure(String actions, int status) {
    Tree.edit(yard.book.resolve("2026-02-16/cure.csv"), ",11.5,", ",16.5,");
    Path day = yard.book.resolve(Tree.DAY);
    Tree.write(
        day.resolve("actions.csv"),
        "lot,time,what,item,value,unit,by,instrument,note\n"
            + actions.replace("…", "26047-B1,2026-02-24 "));
    Ran.of("close", day, "--as", "MA", "--reason", "cure was 16.5 g").expect(status);
    return yard.book.resolve(Smokeyard.RECORD.replace("/r1/", "/r2/"));
  }

  @Test
  void a_lot_that_is_not_met_is_shown_as_such_and_has_no_box_that_says_otherwise() {
    Path record = closedWithTooMuchCure("…19:00,held,,4222,g,MA,,fridge F2\n", 1);
    Ran maker = yard.ran("sign", record, "--as", "MA").expect(0);
    says(maker.out(), ": not met\n        open: ingoing nitrite, dry-cured bacon not met\n");
    Ran reviewer = yard.ran("sign", record, "--as", "OR").expect(0);
    says(reviewer.out(), "in the box \"not-released\"");
    String page = page(record, 1);
    says(page, "Reviewed, not released");
    says(page, "Read. Not released: 1 deviation without all that closes it.");
    assertEquals("not-released", Chain.last(yard.book).get("facts").get("box").asText());
  }

  @Test
  void a_missed_limit_is_reviewed_once_action_and_disposition_are_on_file() {
    Path record =
        closedWithTooMuchCure(
            """
            …19:00,held,,4222,g,MA,,fridge F2
            …19:10,cause,,,,MA,,the tare was not set
            …19:11,control regained,,,,MA,,weighed again by both
            …19:12,prevention,,,,MA,,a card on the scale
            …19:30,disposition,destroyed,4222,g,MA,S-10,rendered
            …19:40,closed,,,,OR,,
            """,
            1);
    yard.ran("sign", record, "--as", "MA").expect(0);
    says(page(record, 1), "corrective action and the disposition of every gram are on file");
    String report = page(record.resolveSibling("deviations.pdf"), 1);
    says(report, "Disposition of every gram is on file.");
    says(report, "All four parts are done.");
  }

  private static String page(Path pdf, int page) {
    return ask("pdftotext", "-enc", "UTF-8", "-f", page, "-l", page, pdf, "-")
        .replaceAll("\\s+", " ");
  }

  @Test
  void the_boxes_say_whose_entries_they_are_about() {
    yard = Smokeyard.signed(folder.resolve("signed"));
    String page = page(yard.record, 1);
    says(page, "Entries by initials: MA 47, IQ 12. Those under my initials are mine");
    says(page, "Entries initialled MA: 47");
    says(page, "Complete; every critical limit is met.");
    says(page, "Entries reviewed: MA 47, IQ 12");
  }

  /** Its box states that limits are met, or action and disposition on file; neither is so. */
  @Test
  void a_print_of_an_earlier_version_with_a_sentence_that_is_not_true_is_not_reviewed()
      throws Exception {
    Path zip = Path.of("src/test/resources/org/flitchbook/kept/0.1.0/wrenfold.zip");
    byte[] kept = Zipped.read(zip).get("wrenfold/records/2026-02-24/r1/26045-B2.pdf");
    Path away = Files.write(folder.resolve("26045-B2.pdf"), kept);
    says(
        yard.ran("sign", away, "--as", "MA", "--book", yard.book).expect(2).err(),
        "was printed by version 0.1.0 of the program");
    Files.write(away, Forger.signed(kept, "prepared", yard.keys, "MA"));
    byte[] before = Tree.bytes(away);
    Ran refused = yard.ran("sign", away, "--as", "OR", "--book", yard.book).expect(2);
    says(refused.err(), "the box states that limits are met");
    assertArrayEquals(before, Tree.bytes(away));
  }

  private void twoWhoHelpEachOther() {
    Path plan = yard.book.resolve("plan.json");
    Tree.edit(plan, "\"roles\": [\"reviewer\"]", "\"roles\": []");
    Tree.edit(plan, "\"roles\": [\"maker\"]", "\"roles\": [\"maker\", \"reviewer\"]");
    yard.key("IQ");
  }

  private Path closedAgain() {
    Ran.of("close", yard.book.resolve(Tree.DAY), "--as", "MA", "--reason", "roles").expect(0);
    return yard.book.resolve(Smokeyard.RECORD.replace("/r1/", "/r2/"));
  }

  @Test
  void two_who_help_each_other_review_each_what_the_other_wrote() {
    twoWhoHelpEachOther();
    Path record = closedAgain();
    yard.ran("sign", record, "--as", "MA").expect(0);
    yard.ran("sign", record, "--as", "IQ", "--role", "reviewer").expect(0);
    Ran twice = yard.ran("sign", record, "--as", "IQ", "--role", "reviewer").expect(2);
    says(twice.err(), "IQ has entries in lot 26047-B1 and can't review them alone (12 of them)");
    yard.ran("sign", record, "--as", "MA", "--role", "reviewer").expect(0);
    String text = ask("pdftotext", "-enc", "UTF-8", record, "-").replaceAll("\\s+", " ");
    says(text, "Entries reviewed: MA 47");
    says(text, "Entries reviewed: IQ 12");
    says(text, "Pre-shipment review, by a second reviewer");
    Ran.of("prove", record).expect(0);
    Ran.of("prove", yard.book).expect(0);
  }

  @Test
  void a_day_sheet_is_reviewed_by_two_in_the_same_way() {
    twoWhoHelpEachOther();
    Path day = closedAgain().resolveSibling("day.pdf");
    yard.ran("sign", day, "--as", "MA", "--role", "maker").expect(0);
    yard.ran("sign", day, "--as", "MA", "--role", "reviewer").expect(0);
    yard.ran("sign", day, "--as", "MA", "--role", "reviewer").expect(2);
    yard.ran("sign", day, "--as", "IQ", "--role", "reviewer").expect(0);
  }

  @Test
  void a_plan_may_ask_for_a_reviewer_without_entries() {
    twoWhoHelpEachOther();
    Tree.edit(
        yard.book.resolve("plan.json"),
        "\"temperature\":",
        "\"review\": \"another\", \"temperature\":");
    Path record = closedAgain();
    yard.ran("sign", record, "--as", "MA").expect(0);
    Ran refused = yard.ran("sign", record, "--as", "IQ", "--role", "reviewer").expect(2);
    says(refused.err(), "the plan asks for a reviewer who has none");
  }

  /** A signing in this machine, which does something else while it asks for the passphrase. */
  private JobResult signingWhile(Runnable busy) {
    Session session =
        new Session(told -> {}, Clock.systemUTC(), asked -> Optional.of("yes"), "0.2.0");
    return RecordSigning.sign(
        session,
        new RecordSigning.Request(
            yard.record,
            "MA",
            Optional.empty(),
            Optional.empty(),
            yard.keys,
            Optional.empty(),
            false,
            false),
        (asking, initials, isNew) -> {
          busy.run();
          return Smokeyard.PASSPHRASE.toCharArray();
        });
  }

  @Test
  void nobody_waits_for_the_ledger_while_somebody_is_asked() {
    Path day = yard.record.resolveSibling("day.pdf");
    JobResult signed = signingWhile(() -> yard.ran("sign", day, "--as", "MA").expect(0));
    assertEquals(ExitStatus.WELL, signed.status());
    List<String> events = Chain.events(yard.book);
    assertEquals(
        List.of("signed r1 day.pdf", "signed r1 26047-B1.pdf"),
        events.subList(events.size() - 2, events.size()));
    assertEquals(List.of(), Chain.broken(yard.book));
    Ran.of("prove", yard.book).expect(0);
  }

  @Test
  void what_changes_while_somebody_is_asked_is_not_signed() {
    Path plan = yard.book.resolve("plan.json");
    List<Runnable> changes =
        List.of(
            () -> Tree.edit(plan, "\"version\": \"3\"", "\"version\": \"4\""),
            () -> {
              Tree.edit(plan, "\"version\": \"4\"", "\"version\": \"3\"");
              yard.sign("MA").expect(0);
            });
    for (Runnable change : changes) {
      UsageException refused = assertThrows(UsageException.class, () -> signingWhile(change));
      assertTrue(
          refused.getMessage().contains("nothing was signed")
              || refused.getMessage().contains("not as the ledger lists it"),
          refused.getMessage());
    }
    assertEquals(1, Chain.events(yard.book).stream().filter(e -> e.startsWith("signed")).count());
  }
}
