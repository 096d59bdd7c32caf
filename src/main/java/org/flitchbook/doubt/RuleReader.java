package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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
    String name = fields.parsed("rule", names(), RuleReader::known).orElse("");
    Optional<Severity> severity =
        fields.parsed("severity", "ask, note or stop", RuleReader::severity);
    Optional<Quantity> above =
        fields.optionalParsed("above", "a difference of temperatures", RuleReader::difference);
    String what = fields.text("do");
    String source = fields.text("source");
    return severity.map(known -> new Rule(name, known, above, what, source));
  }

  private static String names() {
    return "one of " + String.join(", ", Doubts.NAMES);
  }

  private static Optional<String> known(String name) {
    return Optional.of(name).filter(Doubts.NAMES::contains);
  }

  private static Optional<Severity> severity(String word) {
    return Arrays.stream(Severity.values())
        .filter(each -> each != Severity.BROKEN && each.word().equals(word))
        .findFirst();
  }

  private static Optional<Quantity> difference(String text) {
    return Quantity.parse(text).filter(each -> each.dimension() == Dimension.TEMPERATURE);
  }
}
