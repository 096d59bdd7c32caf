package org.flitchbook.words;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.check.Verdict;
import org.flitchbook.input.Severity;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Rank;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The closed sets of words that are shown by a wording of each. */
final class Families {

  private static final Pattern COVERS = Pattern.compile("\"covers\": \"([^\"]+)\"");
  private static final Pattern CLASS = Pattern.compile("\"class\": \"([^\"]+)\"");
  private static final Pattern RULE =
      Pattern.compile(
          "(?m)^\\| ([a-z -]+(?:, [a-z -]+)*) \\| [a-z; ]*(?:stop|ask|note)[a-z; ]* \\|");

  static final Map<String, Set<String>> ALL = all();

  private Families() {}

  private static Map<String, Set<String>> all() {
    Map<String, Set<String>> all = new TreeMap<>();
    all.put("verdict", words(Verdict.values(), Verdict::words));
    all.put("rank", words(Rank.values(), Rank::word));
    all.put("step", words(Step.values(), Step::word));
    all.put("what", words(What.values(), What::word));
    all.put("figure", words(Figure.values(), Figure::word));
    all.put("standing", Set.of("second-hand", "memory", "derived"));
    Set<String> severities = words(Severity.values(), Severity::word);
    severities.remove(Severity.BROKEN.word());
    all.put("severity", severities);
    all.put("rule", rules());
    all.put("probe", Set.of("hand"));
    all.put("column", Set.of("by", "instrument", "value", "item", "note"));
    all.put(
        "use",
        Set.of(
            "sheet",
            "log",
            "layout of logs",
            "plan",
            "former plan",
            "not read",
            "template",
            "own template",
            "findings"));
    all.put("instrument", Set.of("scale", "thermometer", "logger"));
    all.put("changed", Set.of("added", "removed", "changed"));
    all.put("sum", Set.of("rind", "pickle", "packed", "ends", "waste", "samples"));
    all.putAll(ofTheTemplates());
    return all;
  }

  /** What the tool's own classes and rule sets name. */
  private static Map<String, Set<String>> ofTheTemplates() {
    String classes = text(Path.of("templates", "classes.json"));
    return Map.of(
        "class", found(CLASS, classes),
        "regime", listed(classes, "regimes"),
        "cut", listed(classes, "cut"),
        "method", listed(classes, "cureMethod"),
        "covers", found(COVERS, limits()));
  }

  private static <T> Set<String> words(T[] values, Function<T, String> word) {
    return Arrays.stream(values).map(word).collect(Collectors.toCollection(TreeSet::new));
  }

  private static Set<String> found(Pattern pattern, String text) {
    return pattern
        .matcher(text)
        .results()
        .map(match -> match.group(1))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Set<String> listed(String text, String key) {
    return Pattern.compile("\"" + key + "\": \\[([^\\]]*)]")
        .matcher(text)
        .results()
        .flatMap(list -> Pattern.compile("\"([^\"]+)\"").matcher(list.group(1)).results())
        .map(match -> match.group(1))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** The rules that the guide lists as an ask, a stop or a note: only these reach a record. */
  private static Set<String> rules() {
    return RULE.matcher(text(Path.of("docs", "reference.md")))
        .results()
        .map(MatchResult::group)
        .map(row -> row.split(" \\| ", -1)[0].substring(2))
        .flatMap(names -> Stream.of(names.split(", ", -1)))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** What the rule sets call their limits, options and exemptions. */
  static Set<String> names() {
    return found(Pattern.compile("\"name\": \"([^\"]+)\""), limits());
  }

  private static String limits() {
    try (Stream<Path> files = Files.list(Path.of("templates", "limits"))) {
      return files.map(Families::text).collect(Collectors.joining());
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
