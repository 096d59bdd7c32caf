package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Nothing that a person sees in a record, hears of it or takes out of it can be changed unnoticed,
 * whoever signs it afterwards.
 */
final class EditedPagesTest {

  private static final long SEED = 1104;
  private static final int EDITS = SeededRun.cases("Edited pages", SEED, 500);

  /** The record and sheets of the day; a report too, in which there is more to miss. */
  private static final List<String> RECORDS = List.of("26047-B1.pdf", "day.pdf", "deviations.pdf");

  @TempDir private static Path shared;
  private static Smokeyard yard;

  @TempDir private Path folder;

  /** When the edit is made, and who signs what then. */
  private enum Carrier {
    UNSIGNED,
    SIGNED_AFTER,
    SIGNED_TWICE_AFTER,
    BETWEEN_SIGNATURES,
    BEHIND_SIGNATURES;

    byte[] edited(byte[] print, Forger.Deed deed, List<String> boxes) {
      String first = boxes.get(0);
      String second = boxes.get(1);
      return switch (this) {
        case UNSIGNED -> Forger.rewritten(print, deed);
        case SIGNED_AFTER -> signed(Forger.rewritten(print, deed), first, "MA");
        case SIGNED_TWICE_AFTER ->
            signed(signed(Forger.rewritten(print, deed), first, "MA"), second, "OR");
        case BETWEEN_SIGNATURES ->
            signed(Forger.added(signed(print, first, "MA"), deed), second, "OR");
        case BEHIND_SIGNATURES ->
            Forger.added(signed(signed(print, first, "MA"), second, "OR"), deed);
      };
    }

    static byte[] signed(byte[] pdf, String box, String initials) {
      return Forger.signed(pdf, box, yard.keys, initials);
    }
  }

  @BeforeAll
  static void close() {
    yard = Smokeyard.closed(shared);
  }

  private static byte[] print(String record) {
    return Tree.bytes(yard.book.resolve(Smokeyard.RECORD).resolveSibling(record));
  }

  private static List<String> boxes(String record) {
    return record.equals("26047-B1.pdf")
        ? List.of("prepared", "reviewed")
        : record.equals("day.pdf") ? List.of("closed", "reviewed") : List.of("raised", "decided");
  }

  private Ran prove(byte[] pdf) {
    Path file = folder.resolve("record.pdf");
    Tree.write(file, () -> Files.write(file, pdf));
    return Ran.of("prove", file);
  }

  /** Each kind of edit, one after the other, so that a tenth of the run has all of them. */
  @TestFactory
  Stream<DynamicTest> every_edit_is_noticed() {
    SplittableRandom chance = new SplittableRandom(SEED);
    PageEdit[] edits = PageEdit.values();
    Carrier[] carriers = Carrier.values();
    return IntStream.range(0, EDITS)
        .mapToObj(
            i -> {
              PageEdit edit = edits[i % edits.length];
              Carrier carrier = carriers[(i / edits.length + i) % carriers.length];
              String record = RECORDS.get(chance.nextInt(RECORDS.size()));
              long seed = chance.nextLong();
              return DynamicTest.dynamicTest(
                  edit + " " + carrier + " " + record + " " + seed,
                  () -> assertNoticed(edit, carrier, record, seed));
            });
  }

  private void assertNoticed(PageEdit edit, Carrier carrier, String record, long seed) {
    SplittableRandom chance = new SplittableRandom(seed);
    byte[] edited = carrier.edited(print(record), file -> edit.to(file, chance), boxes(record));
    Ran ran = prove(edited);
    assertEquals(1, ran.status(), ran.out());
    assertTrue(ran.out().contains("NOT AS IT WAS."), ran.out());
  }

  /** Else the first test would prove nothing. */
  @TestFactory
  Stream<DynamicTest> what_nobody_edited_is_proved() {
    return RECORDS.stream()
        .map(
            record ->
                DynamicTest.dynamicTest(
                    record,
                    () -> {
                      List<String> boxes = boxes(record);
                      byte[] once = Carrier.signed(print(record), boxes.get(0), "MA");
                      byte[] twice = Carrier.signed(once, boxes.get(1), "OR");
                      for (byte[] pdf : List.of(print(record), once, twice)) {
                        Ran ran = prove(pdf).expect(0);
                        assertTrue(ran.flat().contains("✓ Printed again from what"), ran.out());
                      }
                    }));
  }

  /** The bytes that a reader of PDF skips: behind the end, within a signature's part, before. */
  @Test
  void a_cut_file_is_noticed() {
    byte[] print = print("26047-B1.pdf");
    byte[] signed = Carrier.signed(print, "prepared", "MA");
    SplittableRandom chance = new SplittableRandom(SEED);
    for (int i = 0; i < 20; i++) {
      int length = chance.nextInt(print.length + 1, signed.length);
      Ran ran = prove(Arrays.copyOf(signed, length));
      assertTrue(ran.status() == 1 || ran.status() == 3, () -> length + "\n" + ran.out());
    }
  }

  @Test
  void pages_that_do_not_follow_from_the_evidence_are_not_signed() {
    Path record = folder.resolve("painted.pdf");
    SplittableRandom chance = new SplittableRandom(SEED);
    byte[] painted =
        Forger.rewritten(print("26047-B1.pdf"), file -> PageEdit.PAINTED_OVER.to(file, chance));
    Tree.write(record, () -> Files.write(record, painted));
    Ran ran = yard.ran("sign", record, "--as", "MA", "--book", yard.book).expect(2);
    assertTrue(
        ran.err().contains("is not what its own evidence prints, and is not signed"), ran.err());
  }
}
