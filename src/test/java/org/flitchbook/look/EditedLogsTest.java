package org.flitchbook.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.SeededRun;
import org.flitchbook.book.BookFolder;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Language;
import org.flitchbook.reading.Day;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Small edits of each log of the collection: whatever comes of them is refused in words, or read to
 * the number of rows that was said.
 */
final class EditedLogsTest {

  private static final int CASES = 1_000;
  private static final int OF = 250;
  private static final long SEED = 130_000;

  private static final List<SourceFile> TEMPLATES = BookFolder.toolTemplates();

  @TestFactory
  Stream<DynamicTest> an_edited_log_is_refused_or_read_as_far_as_was_said() {
    int cases = SeededRun.cases("edits of each log", SEED, CASES, OF);
    return Shape.all().stream()
        .map(
            shape ->
                DynamicTest.dynamicTest(
                    shape.log(),
                    () -> {
                      byte[] log = shape.bytes();
                      IntStream.range(0, cases).forEach(i -> edited(shape.log(), log, SEED + i));
                    }));
  }

  /** A degree that rises, once the Unix time beside it is damaged: no count of milliseconds. */
  @Test
  void a_count_in_tenths_is_none_of_milliseconds() {
    Shape unix =
        Shape.all().stream()
            .filter(shape -> shape.log().equals("bare-unix.csv"))
            .findFirst()
            .orElseThrow();
    edited(unix.log(), unix.bytes(), 130_067);
  }

  private static void edited(String name, byte[] log, long seed) {
    SourceFile file = SourceFile.of("2026-02-24/x-" + name, new LogEdit(new Random(seed)).of(log));
    String of = name + ", seed " + seed;
    Look.Result seen = Look.at(file, Language.ENGLISH, TEMPLATES);
    if (!seen.faults().isEmpty()) {
      seen.faults().forEach(fault -> isSaid(fault, of));
    } else if (!Proposal.of(seen).isWithoutTime()) {
      readAsSaid(file, Proposal.of(seen), of);
    }
  }

  private static void isSaid(Fault fault, String of) {
    assertTrue(fault.is(Severity.BROKEN), of);
    assertFalse(fault.found().in(Language.ENGLISH).isBlank(), of);
    assertFalse(fault.expected().in(Language.ENGLISH).isBlank(), of);
  }

  private static void readAsSaid(SourceFile file, Proposal proposal, String of) {
    Map<String, String> units = proposal.units("°F");
    int most = 0;
    for (Map<String, String> answers : proposal.answers()) {
      Day day = ShapesTest.read(file, proposal.answered(units, answers));
      List<Fault> broken =
          day.faults().stream().filter(fault -> fault.is(Severity.BROKEN)).toList();
      assertEquals(List.of(), broken, of);
      most = Math.max(most, day.files().get(1).used());
    }
    int said = (int) proposal.tree().get("read");
    assertTrue(most >= said, most + " of " + said + " rows of " + of);
  }
}
