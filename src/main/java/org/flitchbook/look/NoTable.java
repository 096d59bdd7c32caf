package org.flitchbook.look;

import static org.flitchbook.message.Message.say;

import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;
import org.flitchbook.table.Row;
import org.flitchbook.table.Tables;

/** Refuses a file in which no table of times and readings is found. */
final class NoTable {

  private NoTable() {}

  /** Why a text is no table, by its lines and by the table that seems to be in it. */
  static Optional<Fault> ofText(SourceFile file, Optional<LogTable> table) {
    return Tables.otherFormat(file, table.isPresent())
        .or(() -> table.filter(LogTable::hasBareCommas).flatMap(wide -> bareCommas(file, wide)))
        .or(() -> table.isEmpty() ? nothing(file) : Optional.empty());
  }

  private static Optional<Fault> bareCommas(SourceFile file, LogTable table) {
    Row row = table.sample().get(0);
    return refused(
        Place.of(file.name(), row.line()),
        say(
            "look.no.bare-commas",
            "more cells than the heading has words, as of decimal commas in a file parted by"
                + " commas: {0}",
            String.join(",", row.cells())),
        say("look.no.with-points", "decimal points, or cells parted by semicolons: export it so"));
  }

  private static Optional<Fault> nothing(SourceFile file) {
    return refused(
        Place.of(file.name()),
        say("look.no-table.found", "no rows of times and numbers"),
        say(
            "look.no-table.expected",
            "a log as the logger exports it, parted by comma, semicolon or tab"));
  }

  /** A table in whose time column nothing can be a time. */
  static Fault withoutTimes(SourceFile file, TimeColumn time) {
    return fault(
        Place.of(file.name()),
        say("look.no.times", "no times, but {0}", Oddities.counted(time.strange)),
        say(
            "look.no.some-times",
            "dates and times, Unix time in seconds or milliseconds, or a count from a start"));
  }

  /** A table in which nothing but the time holds digits. */
  static Fault withoutReadings(SourceFile file) {
    return fault(
        Place.of(file.name()),
        say("look.no.readings", "no column that holds digits, the time and a count of rows aside"),
        say("look.no.some-readings", "a column of readings"));
  }

  private static Optional<Fault> refused(Place place, Message found, Message expected) {
    return Optional.of(fault(place, found, expected));
  }

  private static Fault fault(Place place, Message found, Message expected) {
    return Fault.broken("no table", place, found, expected);
  }
}
