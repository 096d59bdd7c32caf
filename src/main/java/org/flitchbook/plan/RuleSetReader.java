package org.flitchbook.plan;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Json;
import org.flitchbook.json.Parsed;
import org.flitchbook.measure.Dimension;

/** Reads a file of limits. */
final class RuleSetReader {

  private RuleSetReader() {}

  static Optional<RuleSet> read(SourceFile file, List<Fault> faults) {
    Parsed parsed = Json.read(file.name(), file.bytes());
    faults.addAll(parsed.faults());
    return parsed.object().map(object -> read(Fields.of(object, faults)));
  }

  private static RuleSet read(Fields file) {
    Formats.check(file);
    String name = file.text("ruleSet");
    String title = file.text("title");
    file.text("made");
    file.text("by");
    for (Fields edition : file.objects("editions")) {
      edition.text("document");
      edition.text("edition");
      edition.optionalText("note");
      edition.end();
    }
    Optional<RuleSet.RindShare> rindShare =
        file.optionalObject("rindShare").flatMap(RuleSetReader::rindShare);
    List<String> notRead = file.texts("notRead");
    Map<String, Limit> limits = limits(file);
    file.end();
    return new RuleSet(name, title, limits, notRead, rindShare);
  }

  private static Map<String, Limit> limits(Fields file) {
    Map<String, Limit> limits = new LinkedHashMap<>();
    for (Fields each : file.objects("limits")) {
      LimitReader.ofRuleSet(each)
          .ifPresent(
              limit -> {
                if (limits.putIfAbsent(limit.id(), limit) != null) {
                  each.fault("id", "\"" + limit.id() + "\" twice", "each id once");
                }
              });
    }
    return limits;
  }

  static Optional<RuleSet.RindShare> rindShare(Fields fields) {
    Optional<org.flitchbook.measure.Quantity> value =
        Quantities.required(fields, "value", Dimension.SHARE);
    Optional<Source> source = fields.object("source").flatMap(LimitReader::source);
    fields.end();
    return value.flatMap(share -> source.map(known -> new RuleSet.RindShare(share, known)));
  }
}
