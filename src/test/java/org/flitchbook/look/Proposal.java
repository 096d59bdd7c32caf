package org.flitchbook.look;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.json.Json;

/** The entry that {@code look} proposes for a log, and what a person makes of it. */
record Proposal(Map<String, Object> tree) {

  private static final String QUESTION = "? ";

  static Proposal of(Look.Result seen) {
    return new Proposal(seen.tree());
  }

  Map<String, Object> entry() {
    return map(list(tree.get("logs")).get(0));
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> map(Object node) {
    return (Map<String, Object>) node;
  }

  private static List<?> list(Object node) {
    return (List<?>) node;
  }

  private static String text(Object node) {
    return String.valueOf(node);
  }

  private static String brief(Object answer) {
    return text(answer).startsWith(QUESTION) ? "?" : text(answer);
  }

  /** All that it says in one line; a question whose answers are listed stays as it is. */
  String summary() {
    Map<String, Object> entry = entry();
    Map<String, Object> time = map(entry.get("time"));
    String heading =
        entry.containsKey("heading")
            ? "no heading, skip " + entry.getOrDefault("skip", 0)
            : "heading " + tree.get("heading");
    String order = time.containsKey("order") ? ", newest first" : "";
    List<String> columns =
        list(entry.get("columns")).stream()
            .map(Proposal::map)
            .map(column -> "\"" + column.get("column") + "\" " + brief(column.get("unit")))
            .toList();
    String odd =
        list(tree.get("odd")).stream()
            .map(Proposal::map)
            .map(
                each ->
                    (each.containsKey("line") ? each.get("line") + " " : "") + each.get("found"))
            .collect(Collectors.joining("; "));
    String parts = text(entry.get("delimiter")).replace("\t", "tab");
    return Stream.of(
                heading,
                parts + " " + brief(entry.getOrDefault("decimal", "")),
                "time " + place(time) + ": " + clock(time) + order,
                "zone " + brief(time.get("zone")),
                String.join(", ", columns) + noNumbers())
            .collect(Collectors.joining(" · "))
        + (odd.isEmpty() ? "" : " · odd: " + odd);
  }

  /** Of each column how many of a hundred cells are no numbers, and what they are. */
  private String noNumbers() {
    return list(tree.get("columns")).stream()
        .map(Proposal::map)
        .filter(column -> column.containsKey("others"))
        .map(
            column ->
                " · no numbers: \"%s\" %s of %s: %s"
                    .formatted(
                        column.get("column"),
                        (int) column.get("filled") - (int) column.get("numbers"),
                        column.get("filled"),
                        String.join(", ", map(column.get("others")).keySet())))
        .collect(Collectors.joining());
  }

  private static String place(Map<String, Object> time) {
    return time.containsKey("column")
        ? brief(time.get("column"))
        : list(time.get("columns")).stream().map(Proposal::text).collect(Collectors.joining(" + "));
  }

  private static String clock(Map<String, Object> time) {
    return Stream.of("pattern", "elapsed", "epoch", "serial")
        .filter(time::containsKey)
        .map(key -> key + " " + time.get(key))
        .collect(Collectors.joining());
  }

  /**
   * The layout of logs with every question answered.
   *
   * @param units of the columns that count, by the words of the proposal; the others are left out
   * @param answers of the log, by key; what has none is answered as it is for every log
   */
  String answered(Map<String, String> units, Map<String, String> answers) {
    Map<String, Object> entry = new LinkedHashMap<>(entry());
    Map<String, Object> time = new LinkedHashMap<>(map(entry.get("time")));
    time.replaceAll((key, value) -> answer(value, answers.getOrDefault(key, "-05:00")));
    entry.put("time", time);
    entry.replaceAll((key, value) -> answer(value, answers.getOrDefault(key, "LG-A")));
    List<Object> columns = new ArrayList<>();
    Map<String, Object> leftOut = new LinkedHashMap<>();
    for (Object each : list(entry.get("columns"))) {
      String word = text(map(each).get("column"));
      Optional<String> unit = Optional.ofNullable(units.get(word));
      unit.ifPresentOrElse(
          known -> columns.add(column(map(each), known)), () -> leftOut.put(word, "no reading"));
    }
    entry.put("columns", columns);
    if (!leftOut.isEmpty()) {
      entry.put("leftOut", leftOut);
    }
    return new String(Json.write(Map.of("logs", List.of(entry))), UTF_8);
  }

  /** Whether the column of the time is a question. */
  boolean isWithoutTime() {
    return text(map(entry().get("time")).get("column")).startsWith(QUESTION);
  }

  /** What a person may answer where the entry offers a choice, each once. */
  List<Map<String, String>> answers() {
    Map<String, Object> time = map(entry().get("time"));
    List<Map<String, String>> answers = new ArrayList<>();
    for (String pattern : offered(time.get("pattern"), "yyyy-MM-dd HH:mm:ss")) {
      for (String mark : offered(entry().get("decimal"), ".")) {
        answers.add(
            Map.of(
                "pattern",
                pattern,
                "decimal",
                mark,
                "elapsed",
                run(time.get("elapsed")),
                "start",
                "2026-02-24T08:02:00",
                "serial",
                "1899-12-30"));
      }
    }
    return answers;
  }

  private static String run(Object question) {
    return text(question).replaceFirst("^\\? ", "").replaceFirst("[ ,].*", "");
  }

  /** The answers that a question lists; where it lists none, what somebody would try. */
  private static List<String> offered(Object question, String otherwise) {
    String text = text(question);
    return text.startsWith(QUESTION) && text.contains(" or ")
        ? List.of(text.substring(QUESTION.length()).split(", | or "))
        : List.of(otherwise);
  }

  private static Object answer(Object value, String answer) {
    return value instanceof String text && text.startsWith(QUESTION) ? answer : value;
  }

  /** Every probe hung in a fridge. */
  private static Map<String, Object> column(Map<String, Object> proposed, String unit) {
    Map<String, Object> column = new LinkedHashMap<>(proposed);
    column.remove("lot");
    column.put("place", "F1");
    column.put("what", unit.equals("%") ? "humidity" : "cooler temperature");
    column.put("unit", answer(column.get("unit"), unit));
    column.put("item", column.get("column"));
    return column;
  }

  /**
   * The unit of each column that is proposed.
   *
   * @param asked where it is a question
   */
  Map<String, String> units(String asked) {
    Map<String, String> units = new LinkedHashMap<>();
    list(entry().get("columns")).stream()
        .map(Proposal::map)
        .forEach(
            each -> units.put(text(each.get("column")), text(answer(each.get("unit"), asked))));
    return units;
  }

  List<String> words() {
    return list(entry().get("columns")).stream()
        .map(Proposal::map)
        .map(column -> text(column.get("column")))
        .toList();
  }
}
