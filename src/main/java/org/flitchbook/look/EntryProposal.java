package org.flitchbook.look;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Readings;
import org.flitchbook.sheet.What;
import org.flitchbook.table.FileText;

/** An entry for {@code logs.json}: what the file shows is stated, all else is a question. */
record EntryProposal(
    String file, FileText encoding, LogTable table, LogScan scan, Language language) {

  private static final Message WHAT =
      say(
          "look.ask.what",
          "{0}; else name the column under leftOut, with the reason",
          Listing.or(
              Stream.of(
                      What.INTERNAL_TEMPERATURE,
                      What.CHAMBER_TEMPERATURE,
                      What.COOLER_TEMPERATURE,
                      What.WATER_TEMPERATURE,
                      What.WET_BULB_TEMPERATURE,
                      What.HUMIDITY)
                  .map(What::word)
                  .toList()));

  Map<String, Object> entry() {
    Map<String, Object> entry = new LinkedHashMap<>();
    entry.put("files", file);
    if (!encoding.marked()) {
      entry.put("encoding", encoding.encoding());
    }
    entry.put("delimiter", String.valueOf(table.delimiter()));
    decimal().ifPresent(mark -> entry.put("decimal", mark));
    if (table.layout().skip() > 0) {
      entry.put("skip", table.layout().skip());
    }
    entry.put("time", time());
    entry.put("instrument", ask("look.ask.instrument", "the logger's id in the plan"));
    entry.put("columns", columns());
    return entry;
  }

  private String ask(String id, String english, Object... arguments) {
    return question(say(id, english, arguments));
  }

  private String question(Argument about) {
    return Readings.QUESTION + about.in(language);
  }

  /** The decimal mark; a question where both stand in the log, empty where none does. */
  Optional<String> decimal() {
    List<String> marks = scan.decimalMarks();
    return marks.size() > 1 ? Optional.of(question(Listing.or(marks))) : marks.stream().findFirst();
  }

  private Map<String, Object> time() {
    Map<String, Object> time = new LinkedHashMap<>();
    if (scan.time.isEmpty()) {
      time.put("column", ask("look.ask.column", "the column of the time"));
      time.put("pattern", ask("look.ask.written", "how it is written"));
    } else {
      List<String> words = scan.time.get().words(table.heading());
      time.put(words.size() == 1 ? "column" : "columns", words.size() == 1 ? words.get(0) : words);
      form(time, scan.time.get(), words.get(0));
    }
    time.put(
        "zone",
        ask(
            "look.ask.zone",
            "the clock's zone, such as America/New_York; a fixed offset such as -05:00 where"
                + " nobody changes the clock"));
    if (scan.time.filter(each -> each.reader().steps.isNewestFirst()).isPresent()) {
      time.put("order", "newest first");
    }
    return time;
  }

  private void form(Map<String, Object> time, TimeColumn column, String word) {
    TimeColumn.Reader reader = column.reader();
    String value =
        switch (reader.key) {
          case TimeColumn.PATTERN -> pattern(column);
          case TimeColumn.ELAPSED -> column.isRun() ? run(reader.value()) : unit(word);
          case "serial" ->
              ask(
                  "look.ask.serial",
                  "{0}, or 1904-01-01; better export the log again",
                  reader.value());
          default -> reader.value();
        };
    time.put(reader.key, value);
    if (reader.key.equals(TimeColumn.ELAPSED)) {
      time.put("start", ask("look.ask.start", "when it began, such as 2026-02-24T08:02:00"));
    }
  }

  private String pattern(TimeColumn column) {
    List<String> patterns = column.patterns();
    if (column.lacksHalves()) {
      return ask("look.ask.halves", "a clock of 12 hours can't be read without AM and PM");
    }
    if (patterns.isEmpty()) {
      return ask("look.ask.pattern", "how it is written; no one pattern fits all rows");
    }
    return patterns.size() == 1 ? patterns.get(0) : question(Listing.or(patterns));
  }

  private String run(String form) {
    List<String> forms = form.equals("h:mm") ? List.of(form, "mm:ss") : List.of(form);
    return ask(
        "look.ask.run",
        "{0}, where it counts from the start; times of day without a date can't be read",
        Listing.or(forms));
  }

  /** What the heading itself says of the unit of a count. */
  private String unit(String word) {
    String lower = word.toLowerCase(Locale.ROOT);
    if (lower.matches(".*([(\\[]s[)\\]]|\\bsec).*")) {
      return "seconds";
    }
    return lower.matches(".*\\bmin.*")
        ? "minutes"
        : question(Listing.or(List.of("seconds", "minutes")));
  }

  private List<Object> columns() {
    List<Object> columns = new ArrayList<>();
    for (int index = 0; index < scan.columns.size(); index++) {
      LogColumn column = scan.columns.get(index);
      boolean reading = column.isOfNumbers() && !column.isCount() && !column.word.isEmpty();
      if (reading && !scan.isOfTime(index)) {
        columns.add(column(column, scan.unit(index)));
      }
    }
    return columns;
  }

  private Map<String, Object> column(LogColumn column, Optional<String> unit) {
    Map<String, Object> entry = new LinkedHashMap<>();
    boolean humid = unit.filter("%"::equals).isPresent();
    entry.put("column", column.word);
    entry.put("what", humid ? What.HUMIDITY.word() : question(WHAT));
    entry.put("unit", unit.orElseGet(() -> ask("look.ask.unit", "°F or °C; of humidity %")));
    entry.put("item", ask("look.ask.item", "the probe's name"));
    if (humid) {
      entry.put("place", ask("look.ask.place", "the place's id in the plan"));
    } else {
      entry.put(
          "lot",
          ask(
              "look.ask.lot",
              "the lot that the probe sat in; of a place, its id as \"place\" instead; where it was"
                  + " put in for another probe of the lot, also \"continues\" with the item of that"
                  + " one"));
    }
    return entry;
  }
}
