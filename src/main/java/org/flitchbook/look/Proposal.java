package org.flitchbook.look;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.table.Encoding;

/** An entry for {@code logs.json}: what the file shows is stated, all else is a question. */
final class Proposal {

  private static final String ZONE =
      "the clock's zone, such as America/New_York; a fixed offset such as -05:00 where nobody"
          + " changes the clock";
  private static final String START = "when it began, such as 2026-02-24T08:02:00";
  private static final String WHAT =
      "internal temperature, chamber temperature, cooler temperature, water temperature, wet-bulb"
          + " temperature or humidity; else leave the column out";

  private final String file;
  private final Encoding encoding;
  private final Frame frame;
  private final Survey survey;

  Proposal(String file, Encoding encoding, Frame frame, Survey survey) {
    this.file = file;
    this.encoding = encoding;
    this.frame = frame;
    this.survey = survey;
  }

  Map<String, Object> entry() {
    Map<String, Object> entry = new LinkedHashMap<>();
    entry.put("files", file);
    if (!encoding.marked()) {
      entry.put("encoding", encoding.name());
    }
    entry.put("delimiter", String.valueOf(frame.delimiter()));
    survey.decimal().ifPresent(mark -> entry.put("decimal", mark));
    if (frame.layout().skip() > 0) {
      entry.put("skip", frame.layout().skip());
    }
    entry.put("time", time());
    entry.put("instrument", question("the logger's id in the plan"));
    entry.put("columns", columns());
    return entry;
  }

  private static String question(String about) {
    return Look.QUESTION + about;
  }

  private Map<String, Object> time() {
    Map<String, Object> time = new LinkedHashMap<>();
    Optional<Clock> clock = survey.clock();
    if (clock.isEmpty()) {
      time.put("column", question("the column of the time"));
      time.put("pattern", question("how it is written"));
    } else {
      List<String> words =
          clock.get().columns().stream().map(index -> frame.heading().cell(index)).toList();
      if (words.size() == 1) {
        time.put("column", words.get(0));
      } else {
        time.put("columns", words);
      }
      form(time, clock.get(), words.get(0));
    }
    time.put("zone", question(ZONE));
    if (clock.filter(each -> each.pace().isNewestFirst()).isPresent()) {
      time.put("order", "newest first");
    }
    return time;
  }

  private static void form(Map<String, Object> time, Clock clock, String word) {
    switch (clock.form()) {
      case WRITTEN ->
          time.put(
              "pattern",
              clock.lacksHalves()
                  ? question("a clock of 12 hours can't be read without AM and PM")
                  : pattern(clock.stamps()));
      case RUN -> {
        time.put("elapsed", question(run(clock)));
        time.put("start", question(START));
      }
      case EPOCH_SECONDS -> time.put("epoch", "seconds");
      case EPOCH_MILLISECONDS -> time.put("epoch", "milliseconds");
      case SERIAL ->
          time.put("serial", question("1899-12-30, or 1904-01-01; better export the log again"));
      case COUNTED -> {
        time.put("elapsed", unit(word).orElse(question("seconds or minutes")));
        time.put("start", question(START));
      }
    }
  }

  private static String pattern(Stamps stamps) {
    List<String> patterns = stamps.patterns();
    if (patterns.isEmpty()) {
      return question("how it is written; no one pattern fits all rows");
    }
    return patterns.size() == 1 ? patterns.get(0) : question(stamps.choices());
  }

  private static String run(Clock clock) {
    String forms = clock.first().matches(".*:.*:.*") ? "h:mm:ss" : "h:mm or mm:ss";
    return forms + ", where it counts from the start; times of day without a date can't be read";
  }

  /** What the heading itself says of the unit. */
  private static Optional<String> unit(String word) {
    String lower = word.toLowerCase(Locale.ROOT);
    if (lower.matches(".*([(\\[]s[)\\]]|\\bsec).*")) {
      return Optional.of("seconds");
    }
    return lower.matches(".*\\bmin.*") ? Optional.of("minutes") : Optional.empty();
  }

  private List<Object> columns() {
    List<Object> columns = new ArrayList<>();
    for (int index = 0; index < survey.columns().size(); index++) {
      Column column = survey.columns().get(index);
      boolean reading = column.isOfNumbers() && !column.isCount() && !column.word().isEmpty();
      if (reading && !survey.isOfTime(index)) {
        columns.add(column(column, survey.unit(index)));
      }
    }
    return columns;
  }

  private static Map<String, Object> column(Column column, Optional<String> unit) {
    Map<String, Object> entry = new LinkedHashMap<>();
    boolean humid = unit.filter("%"::equals).isPresent();
    entry.put("column", column.word());
    entry.put("what", humid ? "humidity" : question(WHAT));
    entry.put("unit", unit.orElse(question("°F or °C; of humidity %")));
    entry.put("item", question("the probe's name"));
    if (humid) {
      entry.put("place", question("the place's id in the plan"));
    } else {
      entry.put(
          "lot",
          question("the lot that the probe sat in; of a place, its id as \"place\" instead"));
    }
    return entry;
  }
}
