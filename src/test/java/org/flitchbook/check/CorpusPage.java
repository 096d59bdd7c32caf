package org.flitchbook.check;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The page that tells what was found on the corpus. */
final class CorpusPage {

  private static final String HEAD =
      """
      # What the rules for dirty data are worth

      %d logs were made from curves that are known at every moment (belly, jowl and loin; a still, a fanned and a crowded fridge whose door is opened; one probe or two; every 30 seconds to every 5 minutes, in °F or °C), with noise and rounding inside the logger's 0.5 °F. Two lots of three chill near the limits. A third was left as it is. The others were damaged in one or two ways. Each lot was judged against a finish of 145 °F and the cooling from 130 to 80 °F in 1.5 hours and from 80 to 40 °F in 5. `CorpusTest` makes every tenth of them again in each build, and all of them, with this page, in `.ci/run long`.

      - **truly bad**: the true curve misses one of the limits.
      - **of these, believed**: they look good to anyone who believes every row, subtracts the times on the clock, and draws straight lines.
      - **found met**: truly bad, and yet a limit that it misses was found to be met. None may be.
      - **truly good, and met**: every limit met, nothing left to explain. A damaged log seldom gets there by itself; with an explanation and other evidence it may.

      | log | lots | truly bad | of these, believed | found met | truly good | and met | with something to explain |
      |---|---|---|---|---|---|---|---|
      """;

  private static final String FOOT =
      """

      The curves come from a simple model of heat flow. They show whether the rules see what was done to a log, and support no decision about food.

      """;

  private CorpusPage() {}

  /** What stands before the part on honest books. */
  static String part(String page) {
    return page.substring(0, page.indexOf(HonestPage.HEADING));
  }

  static String of(List<CorpusLot> all) {
    return head(all.size()) + rows(all) + FOOT;
  }

  /** Whether a page is this one but for its figures. */
  static boolean isAround(String page, int lots) {
    return page.startsWith(head(lots)) && page.endsWith(FOOT);
  }

  private static String head(int lots) {
    return HEAD.formatted(lots);
  }

  /** The rows of the table alone. */
  static String rows(List<CorpusLot> all) {
    Stream<String> damaged =
        Arrays.stream(Damage.values())
            .map(damage -> row(damage.told(), all, lot -> lot.has(damage)));
    return Stream.concat(
            Stream.of(row("as it is", all, lot -> lot.damages().isEmpty())),
            Stream.concat(damaged, Stream.of(row("**all**", all, lot -> true))))
        .collect(Collectors.joining());
  }

  /** The figures of each row, by its name. */
  static Map<String, List<Integer>> figures(String page) {
    Map<String, List<Integer>> rows = new LinkedHashMap<>();
    for (String line : page.lines().filter(line -> line.matches("\\|.*\\d.*")).toList()) {
      String[] cells = line.substring(2, line.length() - 2).split(" \\| ", -1);
      rows.put(cells[0], Arrays.stream(cells).skip(1).map(Integer::valueOf).toList());
    }
    return rows;
  }

  private static String row(String name, List<CorpusLot> all, Predicate<CorpusLot> counted) {
    List<CorpusLot> lots = all.stream().filter(counted).toList();
    List<CorpusLot> bad = lots.stream().filter(lot -> !lot.isGood()).toList();
    List<CorpusLot> good = lots.stream().filter(CorpusLot::isGood).toList();
    return Stream.of(
            lots.size(),
            bad.size(),
            CorpusTest.count(bad, CorpusLot::wouldPass),
            CorpusTest.count(bad, CorpusLot::isFalsePass),
            good.size(),
            CorpusTest.count(good, lot -> lot.found().isMet()),
            CorpusTest.count(good, lot -> !lot.found().open().isEmpty()))
        .map(String::valueOf)
        .collect(Collectors.joining(" | ", "| " + name + " | ", " |\n"));
  }
}
