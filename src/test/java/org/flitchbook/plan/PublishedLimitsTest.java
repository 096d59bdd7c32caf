package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.json.Node;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Limits of the United States against what their sources print, in the words of the data files. */
final class PublishedLimitsTest {

  private static final String ROWS = "/org/flitchbook/plan/published-limits.csv";

  @ParameterizedTest(name = "{0}: {2}")
  @CsvFileSource(resources = ROWS, delimiter = '|', numLinesToSkip = 1)
  void a_limit_is_as_its_source_prints_it(
      String id, String kind, String numbers, String document, String clause, String standing) {
    Map<String, Node> limit = raw(id);
    Map<String, Node> source = ((Node.Obj) limit.get("source")).members();
    assertEquals(kind, text(limit, "kind"), id);
    assertEquals(numbers, printed(limit), id);
    assertEquals(document, text(source, "document"), id);
    assertEquals(clause, text(source, "clause"), id);
    assertEquals(standing, text(source, "standing"), id);
    assertEquals(kind, read(id).kind().word(), id);
  }

  private static Limit read(String id) {
    return Draft.of("least.json").plan().ruleSets().stream()
        .flatMap(set -> Stream.ofNullable(set.limits().get(id)))
        .findFirst()
        .orElseThrow();
  }

  /** The members of a limit as the file has them, so that the unit is the printed one. */
  private static Map<String, Node> raw(String id) {
    String set = id.substring(0, id.indexOf('.'));
    Node.Obj file = Schemas.parse(Draft.text(Path.of("templates", "limits", set + ".json")));
    return members(file.members().get("limits"))
        .filter(limit -> text(limit, "id").equals(id))
        .findFirst()
        .orElseThrow();
  }

  private static Stream<Map<String, Node>> members(Node items) {
    return ((Node.Items) items).items().stream().map(item -> ((Node.Obj) item).members());
  }

  private static String printed(Map<String, Node> limit) {
    return switch (text(limit, "kind")) {
      case "duration" -> text(limit, "from") + " to " + text(limit, "to") + bound(limit);
      case "entry" -> text(limit, "what") + " before " + text(limit, "before");
      case "share" ->
          members(limit.get("options"))
              .map(PublishedLimitsTest::option)
              .collect(Collectors.joining("; "));
      default -> text(limit, limit.containsKey("what") ? "what" : "quantity") + bound(limit);
    };
  }

  private static String bound(Map<String, Node> limit) {
    return limit.containsKey("atMost")
        ? " at most " + text(limit, "atMost")
        : " at least " + text(limit, "atLeast");
  }

  private static String option(Map<String, Node> option) {
    Map<String, Node> condition = ((Node.Obj) option.get("while")).members();
    String state = text(condition, condition.containsKey("is") ? "is" : "atLeast");
    String share = text(option, "name") + ": " + text(condition, "what") + " " + state + " for ";
    return share
        + text(option, "share")
        + List.of("atLeast", "cooking", "endpoint").stream()
            .filter(option::containsKey)
            .map(key -> word(key) + text(option, key))
            .collect(Collectors.joining());
  }

  private static String word(String key) {
    return switch (key) {
      case "atLeast" -> " and ";
      case "cooking" -> " of cooking of ";
      default -> " to ";
    };
  }

  private static String text(Map<String, Node> members, String key) {
    return ((Node.Text) members.get(key)).value();
  }
}
