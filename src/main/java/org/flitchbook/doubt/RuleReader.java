package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Json;
import org.flitchbook.json.Parsed;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;

/** Reads the rules' numbers. */
final class RuleReader {

  private RuleReader() {}

  static List<Rule> read(SourceFile file, List<Fault> faults) {
    Parsed parsed = Json.read(file.name(), file.bytes());
    faults.addAll(parsed.faults());
    List<Rule> rules = new ArrayList<>();
    parsed.object().map(object -> Fields.of(object, faults)).ifPresent(f -> read(f, rules));
    return rules;
  }

  private static void read(Fields file, List<Rule> rules) {
    file.optionalWhole("flitchbook");
    file.text("title");
    file.text("made");
    for (Fields each : file.objects("rules")) {
      rule(each).ifPresent(rules::add);
      each.end();
    }
    file.end();
  }

  private static Optional<Rule> rule(Fields fields) {
    Optional<Named> rule =
        fields.parsed("rule", "one of " + String.join(", ", Doubts.names()), Doubts::named);
    Optional<Severity> severity =
        fields.parsed("severity", "ask, note or stop", RuleReader::severity);
    Map<String, Quantity> numbers = new HashMap<>();
    Map<String, List<Quantity>> lists = new HashMap<>();
    rule.ifPresent(known -> numbers(fields, known, numbers));
    rule.ifPresent(known -> known.lists().forEach(key -> lists.put(key, list(fields, key))));
    String source = fields.text("source");
    return rule.filter(known -> numbers.keySet().equals(known.numbers().keySet()))
        .flatMap(
            known -> severity.map(level -> new Rule(known.name(), level, numbers, lists, source)));
  }

  private static void numbers(Fields fields, Named rule, Map<String, Quantity> numbers) {
    rule.numbers()
        .forEach(
            (key, dimension) ->
                fields
                    .parsed(key, dimension.words(), text -> number(text, dimension))
                    .ifPresent(number -> numbers.put(key, number)));
  }

  private static List<Quantity> list(Fields fields, String key) {
    List<Quantity> list = new ArrayList<>();
    for (String text : fields.texts(key)) {
      Optional<Quantity> number = number(text, Dimension.TEMPERATURE);
      number.ifPresent(list::add);
      if (number.isEmpty()) {
        fields.fault(key, text, Dimension.TEMPERATURE.words());
      }
    }
    return list;
  }

  private static Optional<Quantity> number(String text, Dimension dimension) {
    return Quantity.parse(text).filter(each -> each.dimension() == dimension);
  }

  private static Optional<Severity> severity(String word) {
    return Arrays.stream(Severity.values())
        .filter(each -> each != Severity.BROKEN && each.word().equals(word))
        .findFirst();
  }
}
