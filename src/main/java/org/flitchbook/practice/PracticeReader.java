package org.flitchbook.practice;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Json;
import org.flitchbook.json.Parsed;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;

/** Reads the numbers, group by group, each group with why it is so and its source. */
final class PracticeReader {

  /** What each key of each group is measured in. */
  private static final Map<String, Map<String, Dimension>> GROUPS = new LinkedHashMap<>();

  static {
    GROUPS.put(
        "gap",
        Map.of(
            "intervals", Dimension.NUMBER,
            "time", Dimension.TIME,
            "fewReadings", Dimension.NUMBER));
    GROUPS.put(
        "steadyClock",
        Map.of(
            "steps", Dimension.NUMBER,
            "jitter", Dimension.TIME,
            "share", Dimension.SHARE));
    GROUPS.put(
        "setBack",
        Map.of(
            "hourFrom", Dimension.TIME,
            "hourTo", Dimension.TIME,
            "halfDayFrom", Dimension.TIME,
            "halfDayTo", Dimension.TIME));
    GROUPS.put("futureTime", Map.of("daysAhead", Dimension.NUMBER));
    GROUPS.put("nearMiss", Map.of("below", Dimension.SHARE));
    GROUPS.put("airBeside", Map.of("time", Dimension.TIME));
    GROUPS.put("leapEdge", Map.of("below", Dimension.SHARE));
    GROUPS.put("teaspoon", Map.of("from", Dimension.MASS, "to", Dimension.MASS));
  }

  private final Map<String, Quantity> numbers = new HashMap<>();

  private PracticeReader() {}

  static Optional<Practice> read(List<SourceFile> templates, List<Fault> faults) {
    Optional<SourceFile> file =
        templates.stream().filter(each -> each.name().equals(Practice.FILE)).findFirst();
    if (file.isEmpty()) {
      faults.add(
          Fault.broken(
              "missing file",
              Place.of(Practice.FILE),
              say("practice.missing.found", "no such file"),
              say("practice.missing.expected", "the numbers of common practice")));
    }
    return file.flatMap(found -> read(found, faults));
  }

  private static Optional<Practice> read(SourceFile file, List<Fault> faults) {
    Parsed parsed = Json.read(file.name(), file.bytes());
    faults.addAll(parsed.faults());
    PracticeReader reader = new PracticeReader();
    parsed.object().map(object -> Fields.of(object, faults)).ifPresent(reader::read);
    int wanted = GROUPS.values().stream().mapToInt(Map::size).sum();
    return reader.numbers.size() == wanted ? Optional.of(reader.practice()) : Optional.empty();
  }

  private void read(Fields file) {
    file.optionalWhole("flitchbook");
    file.text("title");
    file.text("made");
    GROUPS.forEach((name, keys) -> file.object(name).ifPresent(group -> read(name, keys, group)));
    file.end();
  }

  private void read(String name, Map<String, Dimension> keys, Fields group) {
    keys.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(each -> read(name + "." + each.getKey(), each.getKey(), each.getValue(), group));
    group.text("why");
    group.text("source");
    group.end();
  }

  private void read(String name, String key, Dimension dimension, Fields group) {
    group
        .parsed(key, expected(dimension), text -> number(text, dimension))
        .ifPresent(number -> numbers.put(name, number));
  }

  private static String expected(Dimension dimension) {
    return (dimension == Dimension.NUMBER ? "a whole number" : dimension.words()) + " above 0";
  }

  /** Above 0, and a whole number where something is counted. */
  private static Optional<Quantity> number(String text, Dimension dimension) {
    return Quantity.parse(text)
        .filter(number -> number.dimension() == dimension && number.value().signum() > 0)
        .filter(
            number ->
                dimension != Dimension.NUMBER
                    || number.value().rounded(0).compareTo(number.value().rounded(3)) == 0);
  }

  private Practice practice() {
    return new Practice(
        new Practice.Gap(count("gap.intervals"), time("gap.time"), count("gap.fewReadings")),
        new Practice.SteadyClock(
            count("steadyClock.steps"),
            time("steadyClock.jitter"),
            number("steadyClock.share").inBase()),
        new Practice.SetBack(
            time("setBack.hourFrom"),
            time("setBack.hourTo"),
            time("setBack.halfDayFrom"),
            time("setBack.halfDayTo")),
        count("futureTime.daysAhead"),
        number("nearMiss.below").inBase(),
        time("airBeside.time"),
        number("leapEdge.below").inBase(),
        new Practice.Teaspoon(number("teaspoon.from"), number("teaspoon.to")));
  }

  private Quantity number(String key) {
    Quantity number = numbers.get(key);
    if (number == null) {
      throw new AssertionError("no number " + key);
    }
    return number;
  }

  private int count(String key) {
    return number(key).value().rounded(0).intValueExact();
  }

  private Duration time(String key) {
    return Duration.ofSeconds(number(key).inBase().rounded(0).longValueExact());
  }
}
