package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.nio.charset.Charset;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Checked;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Format;
import org.flitchbook.json.Key;
import org.flitchbook.json.Node;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.What;
import org.flitchbook.table.Layout;
import org.flitchbook.table.Tables;

/** {@code logs.json}: how each exported file is to be read. Nothing is assumed but UTF-8. */
record LogsFile(Fields object, List<Log> logs) {

  private static final String NEWEST_FIRST = "newest first";
  private static final String NONE = "none";

  static final Binder BINDER =
      Binder.PLAIN
          .with(
              Charset.class,
              new Format<>(
                  Message.of(Listing.or(Tables.CHARSETS)), Tables.CHARSETS, Tables::charset))
          .with(
              "delimiter",
              choice(
                  say("reading.layout.delimiter", "\",\", \";\" or a tab"),
                  List.of(',', ';', '\t')))
          .with(
              "decimal", choice(say("reading.layout.decimal", "\".\" or \",\""), List.of('.', ',')))
          .with(What.class, Format.choice(What.LOGGED, What::word))
          .with(Unit.class, unit())
          .with("elapsed", Format.choice(LogTime.ELAPSED, form -> form))
          .with("epoch", Format.choice(List.of("seconds", "milliseconds"), form -> form))
          .with("order", choice(say("json.text", "\"{0}\"", NEWEST_FIRST), List.of(NEWEST_FIRST)))
          .with("heading", choice(say("json.text", "\"{0}\"", NONE), List.of(NONE)))
          .with("offset", LogTime.anOffset())
          .with(LocalDate.class, LogTime.dayZero());

  /**
   * Some files.
   *
   * @param files a file's name, or a pattern with * and ?
   * @param skip lines before the heading, or before the first row
   * @param heading "none" where the first row is one of the log; its columns are then called by
   *     their numbers, from 1
   * @param instrument the id of an instrument in the plan
   * @param leftOut why a column counts for nothing, by its heading
   */
  record Log(
      Fields object,
      String files,
      Optional<Charset> encoding,
      @Key(format = "delimiter") Optional<Character> delimiter,
      @Key(format = "decimal", otherwise = ".") char decimal,
      @Key(optional = true) int skip,
      @Key(format = "heading") Optional<String> heading,
      LogTime time,
      String instrument,
      @Key(least = 1) List<Column> columns,
      @Key(optional = true) Map<String, String> leftOut)
      implements Checked {

    /** A column is either read or left out, and for a reason that a person can judge. */
    @Override
    public void check(Fields log) {
      leftOut.forEach(
          (word, why) -> {
            boolean isRead = columns.stream().anyMatch(each -> each.column().equals(word));
            if (isRead || why.isBlank()) {
              log.fault(
                  "leftOut",
                  isRead
                      ? say("reading.left-out.read", "\"{0}\", which is a column too", word)
                      : say("reading.left-out.no-reason", "\"{0}\" without a reason", word),
                  say(
                      "reading.left-out.expected",
                      "columns that are not read, each with the reason"));
            }
          });
    }

    private Optional<LogLayout> layout() {
      List<ValueColumn> values = columns.stream().flatMap(each -> each.in(this).stream()).toList();
      return time.clock(decimal).map(clock -> new LogLayout(this, clock, values));
    }

    /** Every column that is named, whatever for. */
    Stream<String> named() {
      Stream<String> read = columns.stream().map(Column::column);
      return Stream.of(time.columns().all().stream(), read, leftOut.keySet().stream())
          .flatMap(words -> words);
    }

    Layout table() {
      return new Layout(encoding, delimiter, skip);
    }
  }

  /**
   * A column of values.
   *
   * @param column the heading, as the file writes it
   * @param item the probe
   * @param place the id of a place in the plan
   * @param piece the piece that the probe sat in; of a column with several lots the lot, and behind
   *     a space its piece
   * @param continues the item of the probe that was taken out where this one was put in
   */
  record Column(
      Fields object,
      String column,
      @Key(required = true) Optional<What> what,
      @Key(required = true) Optional<Unit> unit,
      @Key(otherwise = "") String item,
      Optional<String> lot,
      @Key(optional = true) List<String> lots,
      @Key(otherwise = "") String place,
      Optional<String> piece,
      @Key(otherwise = "") String continues,
      Optional<String> from,
      Optional<String> until)
      implements Checked {

    @Override
    public void check(Fields column) {
      if (served().isEmpty() == place.isEmpty()) {
        column.fault(
            "lot",
            place.isEmpty()
                ? say("reading.layout.neither", "neither")
                : say("reading.layout.both", "both"),
            say("reading.layout.lot-or-place", "either a lot or a place"));
      } else if (!place.isEmpty() && what.filter(known -> !known.isOfPlace()).isPresent()) {
        column.fault(
            "place",
            say("reading.layout.of-a-place", "an {0} of a place", what.get().word()),
            say("reading.layout.lot-of-probe", "the lot that the probe sat in"));
      }
      if (what.isPresent() && unit.filter(each -> !what.get().units().contains(each)).isPresent()) {
        column.fault(
            "unit",
            Message.of(unit.get()),
            say("reading.layout.unit-of", "a unit of {0}", what.get().word()));
      }
      checkSeat(column);
    }

    private void checkSeat(Fields column) {
      if (!continues.isEmpty() && what.filter(What::isOfPlace).isPresent()) {
        column.fault(
            "continues",
            say("json.text", "\"{0}\"", continues),
            say("reading.layout.continues", "no such key beside {0}", what.get().word()));
      }
      if (piece.isPresent() && seat().isEmpty()) {
        column.fault(
            "piece",
            say("json.text", "\"{0}\"", piece.get()),
            say("reading.layout.piece", "one of the column's lots, and its piece behind a space"));
      }
    }

    private List<String> served() {
      List<String> served = new ArrayList<>(lots);
      lot.ifPresent(served::add);
      return served;
    }

    private Optional<Seat> seat() {
      return piece.flatMap(text -> Seat.of(text, served()));
    }

    private Optional<ValueColumn> in(Log log) {
      Optional<Instant> first = from.flatMap(text -> time("from", text, log.time().zone()));
      Optional<Instant> last = until.flatMap(text -> time("until", text, log.time().zone()));
      if (first.isPresent() && last.filter(first.get()::isAfter).isPresent()) {
        object.fault(
            "until",
            Message.of(until.orElseThrow()),
            say("reading.layout.behind-from", "a time behind \"from\""));
      }
      return what.isPresent() && unit.isPresent()
          ? Optional.of(new ValueColumn(series(log.instrument()), first, last))
          : Optional.empty();
    }

    private Series series(String instrument) {
      return new Series(
          "",
          column,
          what.orElseThrow(),
          item,
          served(),
          place,
          seat(),
          continues,
          instrument,
          unit.orElseThrow(),
          0,
          Samples.NONE);
    }

    /** A time on the log's clock; in the doubled hour of autumn it needs its offset. */
    private Optional<Instant> time(String key, String text, ZoneId zone) {
      Times.Complaint complaint =
          (rule, found, expected) -> {
            if (rule.endsWith("clock change")) {
              object.fault(key, found, expected);
            } else {
              object.fault(
                  key,
                  say("json.text", "\"{0}\"", text),
                  say("reading.layout.time", "a date and time such as 2026-02-24 11:08:00"));
            }
          };
      return Times.read(text, zone, complaint).map(Moment::written);
    }
  }

  /**
   * How the logs whose name fits are to be read, as {@code logs.json} states it.
   *
   * @param columns those of which it is known what they hold
   */
  record LogLayout(Log log, LogClock clock, List<ValueColumn> columns) {

    /** By a name with {@code *} for any letters and {@code ?} for one. */
    boolean fits(String baseName) {
      return new FilePattern(log.files()).fits(baseName);
    }

    LogTime time() {
      return log.time();
    }
  }

  /**
   * A column of values.
   *
   * @param series what is stated of it, without readings
   * @param from the first and {@code until} the last time on the log's clock for which this holds
   */
  record ValueColumn(Series series, Optional<Instant> from, Optional<Instant> until) {

    String column() {
      return series.column();
    }

    boolean holdsAt(long millis) {
      return (from.isEmpty() || from.get().toEpochMilli() <= millis)
          && (until.isEmpty() || until.get().toEpochMilli() >= millis);
    }
  }

  static Binder.Bound<List<LogLayout>> read(SourceFile file) {
    Binder.Bound<LogsFile> read = BINDER.read(file, LogsFile.class);
    read.value().ifPresent(logs -> questions(logs.object().object(), read.faults()));
    return read.map(logs -> logs.logs().stream().flatMap(log -> log.layout().stream()).toList());
  }

  /** What a proposed entry left open and nobody has answered yet. */
  private static void questions(Node node, List<Fault> faults) {
    if (node instanceof Node.Obj object) {
      object.members().values().forEach(member -> questions(member, faults));
    } else if (node instanceof Node.Items items) {
      items.items().forEach(item -> questions(item, faults));
    } else if (node instanceof Node.Text text && text.value().startsWith(Readings.QUESTION)) {
      faults.add(
          Fault.broken(
              "question",
              text.place(),
              say("reading.question", "the question {0}", text.found()),
              say("reading.answer", "its answer")));
    }
  }

  private static Format<Unit> unit() {
    List<Unit> units = List.of(Unit.FAHRENHEIT, Unit.CELSIUS, Unit.PERCENT);
    return new Format<>(
        Message.of(Listing.or(units)),
        units.stream().map(Unit::symbol).toList(),
        text -> Unit.parse(text).filter(Level::holds));
  }

  private static <T> Format<T> choice(Message expected, List<T> values) {
    return Format.choice(expected, values, String::valueOf);
  }
}
