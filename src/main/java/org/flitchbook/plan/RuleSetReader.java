package org.flitchbook.plan;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Json;
import org.flitchbook.json.Parsed;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;

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
    Map<String, String> shortNames = new LinkedHashMap<>();
    for (Fields edition : Lists.objects(file, "editions")) {
      String document = edition.text("document");
      edition.optionalText("short").ifPresent(called -> shortNames.put(document, called));
      edition.text("edition");
      edition.optionalText("note");
      edition.end();
    }
    Optional<RuleSet.RindShare> rindShare =
        file.optionalObject("rindShare").flatMap(RuleSetReader::rindShare);
    List<String> notRead = Lists.texts(file, "notRead");
    List<Exemption> exemptions = Exemptions.listed(file);
    Map<String, Limit> limits = limits(file);
    file.end();
    return new RuleSet(name, title, limits, shortNames, notRead, exemptions, rindShare);
  }

  private static Map<String, Limit> limits(Fields file) {
    Map<String, Limit> limits = new LinkedHashMap<>();
    List<Fields> all = Lists.objects(file, "limits");
    for (Fields each : all) {
      LimitReader.ofRuleSet(each)
          .ifPresent(
              limit -> {
                if (limits.putIfAbsent(limit.id(), limit) != null) {
                  each.fault("id", "\"" + limit.id() + "\" twice", "each id once");
                }
              });
    }
    all.forEach(each -> checkDoubt(each, limits.keySet()));
    return limits;
  }

  private static void checkDoubt(Fields limit, Set<String> ids) {
    limit
        .optionalText("doubtedBy")
        .filter(id -> !ids.contains(id))
        .ifPresent(
            id -> limit.fault("doubtedBy", "\"" + id + "\"", "the id of a limit of this file"));
  }

  static Optional<RuleSet.RindShare> rindShare(Fields fields) {
    Optional<Quantity> value = rindValue(fields);
    Optional<Source> source = fields.object("source").flatMap(LimitReader::source);
    fields.end();
    return value.flatMap(share -> source.map(known -> new RuleSet.RindShare(share, known)));
  }

  /** Below the whole, so that some meat is left to reckon on. */
  static Optional<Quantity> rindValue(Fields fields) {
    Optional<Quantity> value = Quantities.required(fields, "value", Dimension.SHARE);
    value
        .filter(share -> !share.isBelow(Quantity.of(100, Unit.PERCENT)))
        .ifPresent(share -> fields.fault("value", share.toString(), "less than 100 %"));
    return value;
  }
}
