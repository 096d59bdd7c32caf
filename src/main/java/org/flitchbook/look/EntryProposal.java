package org.flitchbook.look;

import static org.flitchbook.message.Message.say;

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

/**
 * An entry for {@code logs.json}: what the file shows is stated, all else is a question.
 *
 * @param ask what is put where a question is, from the question and a stand-in for its answer
 */
record EntryProposal(String file, FileText encoding, LogTable table, LogScan scan, Asking ask) {

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

  /** Puts something where a question is. */
  interface Asking {
    String put(Argument question, String standIn);

    /** The question itself, by which an entry is refused until somebody answers it. */
    static Asking in(Language language) {
      return (question, standIn) -> Readings.QUESTION + question.in(language);
    }

    /** An answer like that of a person, so that the reader can be tried on the whole log. */
    static Asking nobody() {
      return (question, standIn) -> standIn;
    }
  }

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
    if (!table.headed()) {
      entry.put("heading", "none");
    }
    entry.put("time", time());
    entry.put(
        "instrument", ask.put(say("look.ask.instrument", "the logger's id in the plan"), "LG"));
    entry.put(
        "columns", scan.columns.stream().filter(scan::mayHoldReadings).map(this::column).toList());
    return entry;
  }

  /** The decimal mark; a question where both stand in the log, empty where none does. */
  Optional<String> decimal() {
    List<String> marks = scan.decimalMarks();
    return marks.size() > 1
        ? Optional.of(ask.put(Listing.or(marks), marks.get(0)))
        : marks.stream().findFirst();
  }

  private Map<String, Object> time() {
    Map<String, Object> time = new LinkedHashMap<>();
    if (scan.time.isEmpty()) {
      time.put("column", ask.put(say("look.ask.column", "the column of the time"), "1"));
      time.put("pattern", ask.put(say("look.ask.written", "how it is written"), PATTERN));
    } else {
      List<String> words = scan.time.get().words(table);
      time.put(words.size() == 1 ? "column" : "columns", words.size() == 1 ? words.get(0) : words);
      form(time, scan.time.get(), words.get(0));
    }
    time.put(
        "zone",
        scan.time
            .flatMap(each -> each.zone(table))
            .orElseGet(
                () ->
                    ask.put(
                        say(
                            "look.ask.zone",
                            "the clock's zone, such as America/New_York; a fixed offset such as"
                                + " -05:00 where nobody changes the clock"),
                        "UTC")));
    if (scan.time.filter(each -> each.reader().steps.isNewestFirst()).isPresent()) {
      time.put("order", "newest first");
    }
    return time;
  }

  /** Stands in for a pattern of which nothing is known. */
  private static final String PATTERN = "yyyy-MM-dd HH:mm:ss";

  private void form(Map<String, Object> time, TimeColumn column, String word) {
    TimeReader reader = column.reader();
    String value =
        switch (reader.key) {
          case TimeReader.PATTERN -> pattern(column);
          case TimeReader.ELAPSED -> column.isRun() ? run(reader.value()) : unit(word, column);
          case TimeReader.SERIAL ->
              ask.put(
                  say(
                      "look.ask.serial",
                      "{0}, or 1904-01-01; better export the log again",
                      reader.value()),
                  reader.value());
          default -> reader.value();
        };
    time.put(reader.key, value);
    if (reader.key.equals(TimeReader.ELAPSED)) {
      time.put(
          "start",
          ask.put(
              say("look.ask.start", "when it began, such as 2026-02-24T08:02:00"),
              TimeReader.START));
    }
  }

  private String pattern(TimeColumn column) {
    List<String> patterns = column.patterns();
    if (column.lacksHalves()) {
      return ask.put(
          say("look.ask.halves", "a clock of 12 hours can't be read without AM and PM"), PATTERN);
    }
    if (column.lacksClock()) {
      return ask.put(
          say("look.ask.no-clock", "dates without a time of day can't be read"), PATTERN);
    }
    if (patterns.isEmpty()) {
      return ask.put(
          say("look.ask.pattern", "how it is written; no one pattern fits all rows"), PATTERN);
    }
    return patterns.size() == 1
        ? patterns.get(0)
        : ask.put(Listing.or(patterns), column.reader().value());
  }

  private String run(String form) {
    List<String> forms = form.equals("h:mm") ? List.of(form, "mm:ss") : List.of(form);
    return ask.put(
        say(
            "look.ask.run",
            "{0}, where it counts from the start; times of day without a date can't be read",
            Listing.or(forms)),
        form);
  }

  /** What the heading itself says of the unit of a count. */
  private String unit(String word, TimeColumn column) {
    String lower = word.toLowerCase(Locale.ROOT);
    if (lower.matches(".*(\\bms\\b|milli).*")) {
      return "milliseconds";
    }
    if (lower.matches(".*([(\\[]s[)\\]]|\\bsec).*")) {
      return "seconds";
    }
    return lower.matches(".*\\bmin.*")
        ? "minutes"
        : ask.put(
            Listing.or(
                column.hasFractions()
                    ? List.of("seconds", "minutes")
                    : List.of("milliseconds", "seconds", "minutes")),
            "seconds");
  }

  private Map<String, Object> column(LogColumn column) {
    Optional<String> unit = column.unit();
    boolean humid = unit.filter("%"::equals).isPresent();
    Map<String, Object> entry = new LinkedHashMap<>();
    entry.put("column", column.word);
    entry.put(
        "what", humid ? What.HUMIDITY.word() : ask.put(WHAT, What.INTERNAL_TEMPERATURE.word()));
    entry.put(
        "unit",
        unit.orElseGet(() -> ask.put(say("look.ask.unit", "°F or °C; of humidity %"), "°F")));
    entry.put("item", ask.put(say("look.ask.item", "the probe's name"), column.word));
    if (humid) {
      entry.put("place", ask.put(say("look.ask.place", "the place's id in the plan"), "P"));
    } else {
      entry.put(
          "lot",
          ask.put(
              say(
                  "look.ask.lot",
                  "the lot that the probe sat in; of a place, its id as \"place\" instead; where it"
                      + " was put in for another probe of the lot, also \"continues\" with the item"
                      + " of that one"),
              "L"));
    }
    return entry;
  }
}
