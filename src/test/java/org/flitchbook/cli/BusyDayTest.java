package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.flitchbook.PrintedWords;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A day with forty lots and long names prints without a cut row, a lost head or an orphan. */
final class BusyDayTest {

  private static final double LEFT = 51;
  private static final double RIGHT = 612 - 51;

  @TempDir private static Path folder;
  private static Path records;

  @BeforeAll
  static void close() {
    Path book = BusyDay.book(folder);
    Ran.of("close", book.resolve("2026-02-25"), "--out", folder.resolve("out")).expect(1);
    records = folder.resolve("out").resolve("2026-02-25").resolve("r1");
  }

  private static List<PrintedWords> words(String name) {
    try {
      return PrintedWords.of(Tree.bytes(records.resolve(name + ".pdf"))).stream()
          .map(BusyDayTest::plain)
          .toList();
    } catch (IOException unreadable) {
      throw new AssertionError(name, unreadable);
    }
  }

  private static PrintedWords plain(PrintedWords each) {
    String words = each.words().replace('\u00a0', ' ').strip();
    return new PrintedWords(
        each.page(), words, each.size(), each.left(), each.top(), each.right(), each.bottom());
  }

  private static List<PrintedWords> on(int page, List<PrintedWords> words) {
    return words.stream().filter(each -> each.page() == page).toList();
  }

  private static int pages(List<PrintedWords> words) {
    return words.stream().mapToInt(PrintedWords::page).max().orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(strings = {"day", "deviations", "26055-B01", "26055-B02"})
  void nothing_is_clipped_and_nothing_lies_on_another(String name) {
    List<PrintedWords> words = words(name);
    for (PrintedWords each : words) {
      assertTrue(each.left() >= LEFT - 0.5 && each.right() <= RIGHT + 0.5, each + " sticks out");
      assertTrue(each.top() > 30 && each.bottom() < 792 - 25, each + " sticks out");
    }
    for (int page = 1; page <= pages(words); page++) {
      assertEquals(List.of(), PrintedWords.overlaps(on(page, words)));
    }
  }

  /** The rows of the first table: each code with all that stands beside and below it. */
  private static List<PrintedWords> codes() {
    List<PrintedWords> words = words("day");
    int table = firstPage("Lots of the day", words);
    int end = firstPage("Prepared", words, "Day closed by");
    return words.stream()
        .filter(each -> each.page() >= table && each.page() <= end)
        .filter(each -> BusyDay.lots().contains(each.words()) && each.left() < LEFT + 1)
        .collect(
            Collectors.collectingAndThen(
                Collectors.toMap(PrintedWords::words, each -> each, (first, later) -> first),
                all ->
                    all.values().stream()
                        .sorted(Comparator.comparing(PrintedWords::words))
                        .toList()));
  }

  private static int firstPage(String caption, List<PrintedWords> words, String... others) {
    List<String> wanted = new ArrayList<>(List.of(others));
    wanted.add(caption);
    return words.stream()
        .filter(each -> wanted.contains(each.words()))
        .mapToInt(PrintedWords::page)
        .min()
        .orElseThrow();
  }

  @Test
  void every_lot_has_one_row_that_stands_on_one_page_with_its_whole_name() {
    List<PrintedWords> words = words("day");
    List<PrintedWords> codes = codes();
    assertEquals(BusyDay.LOTS, codes.size());
    assertTrue(codes.get(codes.size() - 1).page() > 1, "the table goes over the page");
    for (int i = 0; i < codes.size(); i++) {
      PrintedWords code = codes.get(i);
      double next =
          i + 1 < codes.size() && codes.get(i + 1).page() == code.page()
              ? codes.get(i + 1).top()
              : Double.MAX_VALUE;
      String row =
          on(code.page(), words).stream()
              .filter(each -> each.top() >= code.top() - 0.5 && each.top() < next - 0.5)
              .filter(each -> each.left() > code.right())
              .sorted(Comparator.comparing(PrintedWords::left))
              .map(PrintedWords::words)
              .collect(Collectors.joining(" "));
      assertTrue(close(row).contains(close(BusyDay.PRODUCT)), code.words() + ": " + row);
      boolean over = BusyDay.over().contains(code.words());
      assertTrue(row.contains(over ? "not met" : "pending"), code.words() + ": " + row);
      assertTrue(row.contains(over ? "hold the piece" : "go on"), code.words() + ": " + row);
    }
  }

  /** Without the spaces, since a name may be broken at a dash. */
  private static String close(String text) {
    return text.replace(" ", "");
  }

  @ParameterizedTest
  @ValueSource(strings = {"day", "deviations"})
  void a_head_is_never_last_on_its_page(String name) {
    List<PrintedWords> words = words(name);
    List<PrintedWords> heads =
        words.stream().filter(each -> each.words().equals("Lot") && each.size() < 8).toList();
    assertFalse(heads.isEmpty(), "heads of tables in " + name);
    for (PrintedWords head : heads) {
      boolean row =
          on(head.page(), words).stream()
              .anyMatch(
                  each ->
                      each.left() < LEFT + 1
                          && each.top() > head.bottom()
                          && each.top() < head.bottom() + 20
                          && BusyDay.lots().contains(each.words()));
      assertTrue(row, "a head without a row on page " + head.page() + " of " + name);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"day", "deviations", "26055-B01"})
  void boxes_to_sign_stand_together_and_never_alone(String name) {
    List<PrintedWords> words = words(name);
    List<Integer> pages =
        words.stream()
            .filter(each -> each.words().equals("Printed name"))
            .map(PrintedWords::page)
            .distinct()
            .toList();
    assertEquals(1, pages.size(), "all boxes on one page");
    List<PrintedWords> page = on(pages.get(0), words);
    assertTrue(page.stream().anyMatch(each -> each.words().contains("toxic in excess")), name);
    boolean rows = page.stream().anyMatch(each -> BusyDay.lots().contains(each.words()));
    boolean limits = page.stream().anyMatch(each -> each.words().contains("ingoing nitrite"));
    assertTrue(rows || limits, "rows of the table above the boxes of " + name);
  }

  @Test
  void a_long_name_of_a_person_is_printed_whole_in_its_box() {
    List<PrintedWords> words = words("26055-B02");
    String name =
        words.stream()
            .filter(each -> each.left() < LEFT + 20)
            .filter(each -> BusyDay.PERSON.contains(each.words()) && each.words().length() > 4)
            .map(PrintedWords::words)
            .collect(Collectors.joining(""));
    assertEquals(BusyDay.PERSON.replace(" ", ""), name.replace(" ", ""));
  }

  @Test
  void a_day_without_a_deviation_says_so_and_is_signed(@TempDir Path own) {
    Path record = Tree.closedExample(own).resolve(Smokeyard.RECORD);
    String report = Pdfs.text(record.resolveSibling("deviations.pdf"));
    assertTrue(report.contains("NONE") && report.contains("No critical limit was missed"), report);
    assertTrue(report.contains("Raised by") && report.contains("Printed name"), report);
    assertFalse(report.contains("417.3"), report);
  }
}
