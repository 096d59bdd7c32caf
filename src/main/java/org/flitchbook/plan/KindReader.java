package org.flitchbook.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.json.Fields;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Shape;
import org.flitchbook.sheet.What;

/** Reads the numbers of a limit; what is wrong with them goes to the faults of the fields. */
final class KindReader {

  static final String WORDS =
      "ceiling, floor, time-at-temperature, span, holding, duration, cadence, share or entry";

  /** Of all kinds; where the kind is unknown none of them is. */
  private static final List<String> NUMBERS =
      List.of(
          "quantity",
          "what",
          "atMost",
          "atLeast",
          "potassiumNitrite",
          "from",
          "to",
          "stages",
          "addWarmDrying",
          "rows",
          "every",
          "allow",
          "options",
          "before",
          "with");

  private static final String CONDITION =
      "a temperature or humidity with \"atLeast\", or steam or oven sealed with \"is\"";

  private static final List<String> COLUMNS = List.of("by", "instrument", "value", "item", "note");

  private KindReader() {}

  static Optional<Kind> read(Fields limit) {
    String word = limit.text("kind");
    return switch (word) {
      case "ceiling" -> bound(limit, true);
      case "floor" -> bound(limit, false);
      case "time-at-temperature" -> timeAtTemperature(limit);
      case "span" -> span(limit);
      case "holding" -> holding(limit);
      case "duration" -> length(limit);
      case "cadence" -> cadence(limit);
      case "share" -> share(limit);
      case "entry" -> presence(limit);
      default -> {
        limit.fault("kind", "\"" + word + "\"", WORDS);
        NUMBERS.forEach(limit::has);
        yield Optional.empty();
      }
    };
  }

  private static Optional<Kind> bound(Fields limit, boolean ceiling) {
    String key = ceiling ? "atMost" : "atLeast";
    limit.has(key);
    Optional<Figure> figure = limit.parsed("quantity", Figure.choices(), Figure::parse);
    return figure.flatMap(
        known ->
            Quantities.required(limit, key, known.dimension())
                .map(
                    number ->
                        new Kind.Bound(known, ceiling, number, potassium(limit, known, number))));
  }

  /** What the source prints for potassium nitrite beside its number for sodium nitrite. */
  private static Optional<Ratio> potassium(Fields limit, Figure figure, Quantity sodium) {
    return figure == Figure.INGOING_NITRITE
        ? Quantities.optional(limit, "potassiumNitrite", Dimension.SHARE)
            .filter(printed -> printed.value().signum() > 0)
            .map(printed -> sodium.inBase().over(printed.inBase()))
        : Optional.empty();
  }

  private static Optional<Kind> timeAtTemperature(Fields limit) {
    Optional<What> what = temperature(limit);
    List<Kind.Hold> rows = rows(limit);
    Optional<Kind.Integral> integral =
        limit.optionalObject("integral").flatMap(KindReader::integral);
    return what.filter(known -> !rows.isEmpty())
        .map(known -> new Kind.TimeAtTemperature(known, rows, integral));
  }

  private static Optional<Kind.Integral> integral(Fields fields) {
    Optional<Quantity> reference = Quantities.required(fields, "reference", Dimension.TEMPERATURE);
    Optional<Quantity> d = Quantities.required(fields, "d", Dimension.TIME);
    Optional<Quantity> z = Quantities.required(fields, "z", Dimension.TEMPERATURE);
    Optional<Quantity> logs = Quantities.required(fields, "logs", Dimension.NUMBER);
    fields.end();
    if (reference.isEmpty() || d.isEmpty() || z.isEmpty() || logs.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new Kind.Integral(reference.get(), d.get(), z.get(), logs.get()));
  }

  static List<Kind.Hold> rows(Fields limit) {
    List<Kind.Hold> rows = new ArrayList<>();
    for (Fields row : limit.objects("rows")) {
      Optional<Quantity> atLeast = Quantities.required(row, "atLeast", Dimension.TEMPERATURE);
      Optional<Quantity> time = Quantities.required(row, "for", Dimension.TIME);
      row.end();
      atLeast.ifPresent(level -> time.ifPresent(t -> rows.add(new Kind.Hold(level, t))));
    }
    if (rows.isEmpty()) {
      limit.fault("rows", "no rows", "rows of \"atLeast\" and \"for\"");
    }
    return rows;
  }

  private static Optional<Kind> span(Fields limit) {
    Optional<What> what = temperature(limit);
    List<Kind.Stage> stages = limit.has("stages") ? stages(limit) : stage(limit);
    Optional<Kind.WarmDrying> drying = warmDrying(limit, stages);
    return what.filter(known -> !stages.isEmpty())
        .map(known -> new Kind.Span(known, stages, drying));
  }

  /** Only where something rises, since it is counted nowhere else. */
  private static Optional<Kind.WarmDrying> warmDrying(Fields limit, List<Kind.Stage> stages) {
    Optional<Fields> found = limit.optionalObject("addWarmDrying");
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = found.get();
    Optional<Quantity> above = Quantities.required(fields, "above", Dimension.TEMPERATURE);
    Optional<Quantity> beyond = Quantities.required(fields, "beyond", Dimension.TIME);
    String note = fields.text("note");
    fields.end();
    if (!stages.isEmpty() && stages.stream().allMatch(Kind.Stage::falling)) {
      limit.fault("addWarmDrying", "it in a fall", "it where the temperature rises");
    }
    return above.flatMap(level -> beyond.map(time -> new Kind.WarmDrying(level, time, note)));
  }

  static List<Kind.Stage> stages(Fields limit) {
    List<Kind.Stage> stages = new ArrayList<>();
    for (Fields each : limit.objects("stages")) {
      stages.addAll(stage(each));
      each.end();
    }
    if (stages.isEmpty()) {
      limit.fault("stages", "no stages", "stages of \"from\", \"to\" and \"atMost\"");
    }
    return stages;
  }

  private static List<Kind.Stage> stage(Fields fields) {
    Optional<Quantity> from = Quantities.required(fields, "from", Dimension.TEMPERATURE);
    Optional<Quantity> to = Quantities.required(fields, "to", Dimension.TEMPERATURE);
    Optional<Quantity> atMost = Quantities.required(fields, "atMost", Dimension.TIME);
    if (from.isEmpty() || to.isEmpty() || atMost.isEmpty()) {
      return List.of();
    }
    if (from.get().compareTo(to.get()) == 0) {
      fields.fault("to", to.get().toString(), "another temperature than \"from\"");
      return List.of();
    }
    return List.of(new Kind.Stage(from.get(), to.get(), atMost.get()));
  }

  private static Optional<Kind> holding(Fields limit) {
    Optional<What> what =
        limit.parsed("what", "a temperature of the sheets, or humidity", KindReader::withLevel);
    Optional<Quantity> every = Quantities.required(limit, "every", Dimension.TIME);
    Quantity allow =
        Quantities.optional(limit, "allow", Dimension.TIME).orElse(Quantity.of(0, Unit.SECOND));
    boolean ceiling = limit.has("atMost") || !limit.has("atLeast");
    return what.flatMap(
        known ->
            Quantities.level(
                    limit,
                    ceiling ? "atMost" : "atLeast",
                    known.shape().dimension().orElse(Dimension.TEMPERATURE))
                .flatMap(
                    level ->
                        every.map(time -> new Kind.Holding(known, ceiling, level, time, allow))));
  }

  private static Optional<Kind> length(Fields limit) {
    Optional<What> from = what(limit, "from");
    Optional<What> to = what(limit, "to");
    boolean atLeast = limit.has("atLeast") || !limit.has("atMost");
    Optional<Quantity> time =
        Quantities.required(limit, atLeast ? "atLeast" : "atMost", Dimension.TIME);
    return from.flatMap(
        first ->
            to.flatMap(last -> time.map(number -> new Kind.Length(first, last, atLeast, number))));
  }

  private static Optional<Kind> cadence(Fields limit) {
    Optional<What> what = what(limit, "what");
    Optional<Quantity> every = Quantities.required(limit, "every", Dimension.TIME);
    return what.flatMap(known -> every.map(time -> new Kind.Cadence(known, time)));
  }

  private static Optional<Kind> share(Fields limit) {
    List<Kind.Option> options = new ArrayList<>();
    for (Fields each : limit.objects("options")) {
      option(each).ifPresent(options::add);
      each.end();
    }
    if (options.isEmpty()) {
      limit.fault("options", "no options", "options of \"name\", \"while\" and \"share\"");
      return Optional.empty();
    }
    return Optional.of(new Kind.Share(options));
  }

  private static Optional<Kind.Option> option(Fields option) {
    String name = option.text("name");
    Optional<Fields> condition = option.object("while");
    Optional<Quantity> share = Quantities.required(option, "share", Dimension.SHARE);
    Optional<Quantity> atLeast = Quantities.optional(option, "atLeast", Dimension.TIME);
    Optional<Quantity> cooking = Quantities.optional(option, "cooking", Dimension.TIME);
    Optional<Quantity> endpoint = Quantities.optional(option, "endpoint", Dimension.TEMPERATURE);
    boolean on = condition.filter(fields -> fields.has("is")).isPresent();
    Optional<What> what =
        condition.flatMap(
            fields ->
                on
                    ? fields.parsed("what", "steam or oven sealed", KindReader::switched)
                    : fields.parsed("what", CONDITION, KindReader::withLevel));
    Optional<Quantity> level =
        on ? Optional.empty() : condition.flatMap(fields -> level(fields, what));
    condition.ifPresent(fields -> end(fields, on));
    if (what.isEmpty() || share.isEmpty() || (!on && level.isEmpty())) {
      return Optional.empty();
    }
    return Optional.of(
        new Kind.Option(name, what.get(), on, level, share.get(), atLeast, cooking, endpoint));
  }

  private static Optional<Quantity> level(Fields condition, Optional<What> what) {
    return what.flatMap(known -> known.shape().dimension())
        .flatMap(dimension -> Quantities.level(condition, "atLeast", dimension));
  }

  private static void end(Fields condition, boolean on) {
    if (on) {
      condition.parsed("is", "\"on\"", text -> Optional.of(text).filter("on"::equals));
    }
    condition.end();
  }

  private static Optional<Kind> presence(Fields limit) {
    Optional<What> what = what(limit, "what");
    Optional<What> before = limit.has("before") ? what(limit, "before") : Optional.empty();
    List<String> with = limit.texts("with");
    for (String column : with) {
      if (!COLUMNS.contains(column)) {
        limit.fault("with", "\"" + column + "\"", String.join(", ", COLUMNS));
      }
    }
    return what.map(known -> new Kind.Presence(known, before, with));
  }

  private static Optional<What> switched(String word) {
    return What.parse(word).filter(what -> what.shape() == Shape.ON_OFF);
  }

  private static Optional<What> temperature(Fields fields) {
    return fields.parsed(
        "what",
        "a temperature of the sheets",
        word -> withLevel(word).filter(what -> what.shape() == Shape.TEMPERATURE));
  }

  /** Something of which there can be a log. */
  private static Optional<What> withLevel(String word) {
    return What.parse(word)
        .filter(what -> what.shape() == Shape.TEMPERATURE || what == What.HUMIDITY);
  }

  private static Optional<What> what(Fields fields, String key) {
    return fields.parsed(key, "a word of the sheets", What::parse);
  }
}
