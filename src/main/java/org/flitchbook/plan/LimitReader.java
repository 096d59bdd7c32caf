package org.flitchbook.plan;

import java.util.List;
import java.util.Optional;
import org.flitchbook.json.Fields;
import org.flitchbook.measure.Dimension;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
import org.flitchbook.sheet.Step;

/** Reads one limit: of a rule set with its source, or of the plan itself with its support. */
final class LimitReader {

  private static final Monitoring NOT_MONITORED = new Monitoring("", "", "", "");

  /** Only so that the other keys of a limit without a source are looked at too. */
  private static final Source NO_SOURCE = new Source("", "", "", Standing.MEMORY);

  private LimitReader() {}

  /** A rule set's limit. */
  static Optional<Limit> ofRuleSet(Fields fields) {
    Optional<Source> source = fields.object("source").flatMap(LimitReader::source);
    Optional<String> doubtedBy = fields.optionalText("doubtedBy");
    Optional<Limit> limit =
        read(fields, source.orElse(NO_SOURCE), Optional.empty(), doubtedBy, NOT_MONITORED)
            .filter(known -> source.isPresent());
    fields.end();
    return limit;
  }

  /** The plan's own limit; its support is its source. */
  static Optional<Limit> ofPlan(Fields fields, String edition) {
    String support = support(fields);
    Source source = new Source(support, "", edition, Standing.PLAN);
    Optional<Limit> limit =
        read(fields, source, Optional.of(support), Optional.empty(), monitoring(fields));
    fields.end();
    return limit;
  }

  /** What the plan rests something on; must be there and say something. */
  static String support(Fields fields) {
    String support = fields.text("support");
    if (support.isBlank() && fields.has("support")) {
      fields.fault("support", "no support", "the document that supports it");
    }
    return support;
  }

  private static Optional<Limit> read(
      Fields fields,
      Source source,
      Optional<String> support,
      Optional<String> doubtedBy,
      Monitoring monitoring) {
    String id = fields.text("id");
    String covers = fields.text("covers");
    Argument name =
        fields
            .optionalText("name")
            .filter(own -> !own.equals(covers))
            .map(own -> new Word("name", own))
            .orElse(new Word("covers", covers));
    Optional<Step> step =
        fields.parsed("step", "cure, soak, dry, smoke, chill or release", Step::parse);
    Optional<Rank> rank = fields.parsed("rank", "critical, operating or record", Rank::parse);
    Conditions when =
        fields.optionalObject("when").map(LimitReader::conditions).orElse(Conditions.NONE);
    String because = fields.text("because");
    Optional<Kind> kind = KindReader.read(fields);
    if (step.isEmpty() || rank.isEmpty() || kind.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Limit(
            id,
            name,
            covers,
            step.get(),
            rank.get(),
            kind.get(),
            when,
            Message.of(because),
            source,
            support,
            doubtedBy,
            monitoring,
            ""));
  }

  static Optional<Source> source(Fields fields) {
    String document = fields.text("document");
    String clause = fields.optionalText("clause").orElse("");
    String edition = fields.text("edition");
    Optional<Standing> standing =
        fields.parsed("standing", "read, second-hand, memory or derived", Standing::parse);
    fields.end();
    return standing.map(known -> new Source(document, clause, edition, known));
  }

  static Monitoring monitoring(Fields fields) {
    return new Monitoring(
        fields.optionalText("ccp").orElse(""),
        fields.optionalText("monitored").orElse(""),
        fields.optionalText("by").orElse(""),
        fields.optionalText("ifMissed").orElse(""));
  }

  private static Conditions conditions(Fields when) {
    Conditions conditions =
        new Conditions(
            CureMethod.all(when, texts(when, "cureMethod")),
            texts(when, "cut"),
            rinds(when),
            texts(when, "class"),
            Quantities.optional(when, "nitriteAtLeast", Dimension.SHARE),
            Quantities.optional(when, "acceleratorAtLeast", Dimension.SHARE),
            when.optionalText("notNamed"),
            Quantities.optional(when, "thicknessAtMost", Dimension.LENGTH));
    when.end();
    return conditions;
  }

  private static List<String> rinds(Fields when) {
    List<String> rinds = texts(when, "rind");
    if (!List.of("on", "off").containsAll(rinds)) {
      when.fault("rind", "\"" + String.join("\", \"", rinds) + "\"", "on, off");
    }
    return rinds;
  }

  private static List<String> texts(Fields when, String key) {
    return when.has(key) ? when.texts(key) : List.of();
  }
}
