package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Json;
import org.flitchbook.json.Parsed;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.What;
import org.flitchbook.table.Layout;
import org.flitchbook.table.Tables;

/** Reads {@code logs.json}: how each exported file is to be read. Nothing is assumed but UTF-8. */
final class LayoutReader {

  private LayoutReader() {}

  static List<LogLayout> read(SourceFile file, List<Fault> faults) {
    Parsed parsed = Json.read(file.name(), file.bytes());
    faults.addAll(parsed.faults());
    List<LogLayout> layouts = new ArrayList<>();
    parsed
        .object()
        .ifPresent(
            object -> {
              Questions.find(object, faults);
              Fields fields = Fields.of(object, faults);
              if (!fields.has("logs")) {
                fields.fault("logs", "no \"logs\"", "a list there");
              }
              fields.objects("logs").forEach(log -> layout(log).ifPresent(layouts::add));
              fields.end();
            });
    return layouts;
  }

  private static Optional<LogLayout> layout(Fields log) {
    String files = log.text("files");
    Layout layout =
        new Layout(
            log.optionalParsed(
                "encoding",
                "utf-8, utf-16le, utf-16be, windows-1252 or iso-8859-1",
                Tables::charset),
            log.optionalParsed("delimiter", "\",\", \";\" or a tab", LayoutReader::delimiter),
            skip(log));
    char decimal = log.optionalParsed("decimal", "\".\" or \",\"", LayoutReader::mark).orElse('.');
    Optional<LogLayout.Time> time =
        log.object("time").flatMap(each -> new ClockReader(each, decimal).read());
    ZoneId zone = time.map(known -> known.clock().zone()).orElse(ZoneOffset.UTC);
    String instrument = log.text("instrument");
    List<LogLayout.ValueColumn> columns = new ArrayList<>();
    List<Fields> described = log.objects("columns");
    described.forEach(column -> column(column, zone).ifPresent(columns::add));
    if (described.isEmpty()) {
      log.fault("columns", "no column", "the columns to be read");
    }
    log.end();
    return time.map(
        known -> new LogLayout(log.place(), files, layout, decimal, known, instrument, columns));
  }

  private static int skip(Fields log) {
    int lines = log.optionalWhole("skip").orElse(0);
    if (lines < 0) {
      log.fault("skip", String.valueOf(lines), "0 or more");
    }
    return Math.max(0, lines);
  }

  private static Optional<Character> delimiter(String text) {
    return text.equals(",") || text.equals(";") || text.equals("\t")
        ? Optional.of(text.charAt(0))
        : Optional.empty();
  }

  private static Optional<Character> mark(String text) {
    return text.equals(".") || text.equals(",") ? Optional.of(text.charAt(0)) : Optional.empty();
  }

  private static Optional<LogLayout.ValueColumn> column(Fields column, ZoneId zone) {
    String name = column.text("column");
    Optional<What> what = column.parsed("what", Logged.choices(), LayoutReader::what);
    Optional<Unit> unit =
        column.parsed("unit", "°F, °C or %", text -> Unit.parse(text).filter(Level::holds));
    String item = column.optionalText("item").orElse("");
    List<String> lots = new ArrayList<>(column.texts("lots"));
    column.optionalText("lot").ifPresent(lots::add);
    String place = column.optionalText("place").orElse("");
    Optional<Seat> seat = seat(column, lots);
    Optional<Instant> from = time(column, "from", zone);
    Optional<Instant> until = time(column, "until", zone);
    column.end();
    checkServed(column, what, lots, place);
    if (from.isPresent() && until.filter(from.get()::isAfter).isPresent()) {
      column.fault("until", column.optionalText("until").orElse(""), "a time behind \"from\"");
    }
    fits(column, what, unit);
    return what.flatMap(
        w ->
            unit.map(
                u ->
                    new LogLayout.ValueColumn(
                        column.place(), name, w, u, item, lots, place, seat, from, until)));
  }

  private static Optional<Seat> seat(Fields column, List<String> lots) {
    return column.optionalParsed(
        "piece",
        "one of the column's lots, and its piece behind a space",
        text -> Seat.of(text, lots));
  }

  private static void checkServed(
      Fields column, Optional<What> what, List<String> lots, String place) {
    if (lots.isEmpty() == place.isEmpty()) {
      column.fault("lot", lots.isEmpty() ? "neither" : "both", "either a lot or a place");
    } else if (!place.isEmpty() && what.filter(w -> !Logged.ofPlace(w)).isPresent()) {
      column.fault(
          "place", "an " + what.get().word() + " of a place", "the lot that the probe sat in");
    }
  }

  private static void fits(Fields column, Optional<What> what, Optional<Unit> unit) {
    boolean differ =
        what.isPresent()
            && unit.isPresent()
            && !what.get().shape().dimension().equals(Optional.of(unit.get().dimension()));
    if (differ) {
      column.fault("unit", unit.get().symbol(), "a unit of " + what.get().word());
    }
  }

  private static Optional<What> what(String word) {
    return What.parse(word).filter(Logged::inLogs);
  }

  /** A time on the log's clock; in the doubled hour of autumn it needs its offset. */
  private static Optional<Instant> time(Fields column, String key, ZoneId zone) {
    Optional<String> text = column.optionalText(key);
    Optional<Times.Result> result = text.map(written -> Times.read(written, zone));
    if (result.isPresent() && result.get() instanceof Times.Result.Wrong wrong) {
      boolean clockChange = wrong.rule().endsWith("clock change");
      column.fault(
          key,
          clockChange ? wrong.found() : Message.of("\"" + text.orElse("") + "\""),
          clockChange
              ? wrong.expected()
              : say("reading.layout.time", "a date and time such as 2026-02-24 11:08:00"));
      return Optional.empty();
    }
    return result.map(read -> ((Times.Result.Read) read).moment().written());
  }
}
