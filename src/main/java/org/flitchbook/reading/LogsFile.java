package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.nio.charset.Charset;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Checked;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Format;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.What;
import org.flitchbook.table.Layout;
import org.flitchbook.table.Tables;

/** {@code logs.json}: how each exported file is to be read. Nothing is assumed but UTF-8. */
record LogsFile(Fields object, List<Log> logs) {

  static final Binder BINDER =
      Binder.PLAIN
          .with(Charset.class, charset())
          .with("delimiter", delimiter())
          .with("decimal", decimal())
          .with(What.class, Format.choice(Logged.ALL, What::word))
          .with(Unit.class, unit())
          .with("elapsed", Format.choice(LogTime.ELAPSED, form -> form))
          .with("epoch", words("seconds", "milliseconds"))
          .with("order", order())
          .with("offset", LogTime.anOffset())
          .with(LocalDate.class, LogTime.dayZero());

  /**
   * Some files.
   *
   * @param files a file's name, or a pattern with * and ?
   * @param skip lines before the heading
   * @param instrument the id of an instrument in the plan
   */
  record Log(
      Fields object,
      String files,
      Optional<Charset> encoding,
      @Key(format = "delimiter") Optional<Character> delimiter,
      @Key(format = "decimal", otherwise = ".") char decimal,
      @Key(optional = true) int skip,
      LogTime time,
      String instrument,
      @Key(least = 1) List<Column> columns) {

    private Optional<LogLayout> layout() {
      Layout layout = new Layout(encoding, delimiter, skip);
      List<LogLayout.ValueColumn> values =
          columns.stream().flatMap(each -> each.in(time.zone()).stream()).toList();
      return time.read(decimal)
          .map(
              known ->
                  new LogLayout(object.place(), files, layout, decimal, known, instrument, values));
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
      } else if (!place.isEmpty() && what.filter(known -> !Logged.ofPlace(known)).isPresent()) {
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

    private Optional<LogLayout.ValueColumn> in(ZoneId zone) {
      Optional<Instant> first = from.flatMap(text -> time("from", text, zone));
      Optional<Instant> last = until.flatMap(text -> time("until", text, zone));
      if (first.isPresent() && last.filter(first.get()::isAfter).isPresent()) {
        object.fault(
            "until",
            Message.of(until.orElseThrow()),
            say("reading.layout.behind-from", "a time behind \"from\""));
      }
      return what.flatMap(
          known ->
              unit.map(
                  in ->
                      new LogLayout.ValueColumn(
                          object.place(),
                          column,
                          known,
                          in,
                          item,
                          served(),
                          place,
                          seat(),
                          first,
                          last)));
    }

    /** A time on the log's clock; in the doubled hour of autumn it needs its offset. */
    private Optional<Instant> time(String key, String text, ZoneId zone) {
      if (Times.read(text, zone) instanceof Times.Result.Read read) {
        return Optional.of(read.moment().written());
      }
      Times.Result.Wrong wrong = (Times.Result.Wrong) Times.read(text, zone);
      if (wrong.rule().endsWith("clock change")) {
        object.fault(key, wrong.found(), wrong.expected());
      } else {
        object.fault(
            key,
            say("json.text", "\"{0}\"", text),
            say("reading.layout.time", "a date and time such as 2026-02-24 11:08:00"));
      }
      return Optional.empty();
    }
  }

  static List<LogLayout> read(SourceFile file, List<Fault> faults) {
    Binder.Bound<LogsFile> read = BINDER.read(file, LogsFile.class);
    read.value().ifPresent(logs -> Questions.find(logs.object().object(), read.faults()));
    List<LogLayout> layouts =
        read.value().map(LogsFile::logs).orElse(List.of()).stream()
            .flatMap(log -> log.layout().stream())
            .toList();
    faults.addAll(read.faults());
    return layouts;
  }

  private static Format<String> words(String... words) {
    return Format.choice(List.of(words), word -> word);
  }

  private static Format<Charset> charset() {
    return new Format<>(Message.of(Listing.or(Tables.CHARSETS)), Tables.CHARSETS, Tables::charset);
  }

  private static Format<Character> delimiter() {
    Message expected = say("reading.layout.delimiter", "\",\", \";\" or a tab");
    return Format.choice(expected, List.of(',', ';', '\t'), String::valueOf);
  }

  private static Format<Character> decimal() {
    Message expected = say("reading.layout.decimal", "\".\" or \",\"");
    return Format.choice(expected, List.of('.', ','), String::valueOf);
  }

  private static Format<Unit> unit() {
    List<Unit> units = List.of(Unit.FAHRENHEIT, Unit.CELSIUS, Unit.PERCENT);
    return new Format<>(
        Message.of(Listing.or(units)),
        units.stream().map(Unit::symbol).toList(),
        text -> Unit.parse(text).filter(Level::holds));
  }

  private static Format<String> order() {
    return Format.choice(
        say("json.text", "\"{0}\"", LogTime.NEWEST_FIRST),
        List.of(LogTime.NEWEST_FIRST),
        word -> word);
  }
}
