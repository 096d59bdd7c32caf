package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Shape;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.What;
import org.flitchbook.table.Row;

/** Turns one row of a sheet into an entry, or into a fault that says why it can't be used. */
final class EntryReader {

  private static final Pattern CORRECTS = Pattern.compile("[^:]+\\.csv:[1-9]\\d{0,8}");

  private final String file;
  private final Sheet sheet;
  private final Hand hand;
  private final List<Fault> faults;
  private char delimiter = ',';

  EntryReader(String file, Sheet sheet, Hand hand, List<Fault> faults) {
    this.file = file;
    this.sheet = sheet;
    this.hand = hand;
    this.faults = faults;
  }

  void delimiter(char stated) {
    delimiter = stated;
  }

  void tooWide(Row row, int width, String lot) {
    faults.add(
        Fault.stop(
            "row too wide",
            knownLot(lot),
            Place.of(file, row.line()),
            say(
                "reading.row.cells",
                "{0} cells ({1})",
                row.cells().size(),
                String.join(delimiter + " ", row.cells())),
            decimalHint(say("reading.row.as-heading", "{0} cells as in the heading", width))));
  }

  void underNoWord(Row row, List<String> cells, String lot) {
    faults.add(
        Fault.stop(
            "cell under no word",
            knownLot(lot),
            Place.of(file, row.line()),
            say(
                "reading.row.nameless",
                "cells under no word of the heading ({0})",
                String.join(", ", cells)),
            say("reading.row.words-above", "a word above every cell that is filled")));
  }

  private Message decimalHint(Message expected) {
    return delimiter == ','
        ? say(
            "reading.row.bare-comma",
            "{0}; a decimal comma can't stand bare in a comma file",
            expected)
        : expected;
  }

  Optional<Entry> read(int line, Map<String, String> cells) {
    return new Attempt(Place.of(file, line), cells).entry();
  }

  private static String knownLot(String lot) {
    return LotName.isOne(lot) ? lot : "";
  }

  /** One row on its way to become an entry; every fault of the row is found, not only the first. */
  private final class Attempt {

    private final Place place;
    private final Map<String, String> cells;
    private final String lot;
    private boolean usable = true;

    Attempt(Place place, Map<String, String> cells) {
      this.place = place;
      this.cells = cells;
      this.lot = knownLot(cell("lot"));
    }

    Optional<Entry> entry() {
      checkLot();
      Optional<Moment> time = time("time");
      Optional<What> what = what();
      Optional<Moment> entered = cell("entered").isEmpty() ? Optional.empty() : time("entered");
      checkCorrects();
      Optional<Quantity> quantity = what.flatMap(this::quantity);
      what.ifPresent(this::checkFilled);
      return usable && time.isPresent() && what.isPresent()
          ? Optional.of(entry(time.get(), what.get(), quantity, entered))
          : Optional.empty();
    }

    private Entry entry(
        Moment time, What what, Optional<Quantity> quantity, Optional<Moment> entered) {
      Map<String, String> other = new LinkedHashMap<>(cells);
      SheetReader.REQUIRED.forEach(other::remove);
      SheetReader.OPTIONAL.forEach(other::remove);
      if (quantity.isEmpty() && !cell("unit").isEmpty()) {
        other.put("unit", cell("unit"));
      }
      return new Entry(
          place,
          sheet,
          lot,
          cell("piece"),
          time,
          what,
          cell("item"),
          cell("value"),
          quantity,
          cell("by"),
          cell("instrument"),
          cell("note"),
          entered,
          cell("corrects"),
          other);
    }

    private void checkLot() {
      String written = cell("lot");
      if (written.isEmpty()) {
        checkWithoutLot();
      } else if (lot.isEmpty()) {
        stop("lot", "lot", Message.of(written), LotName.expected(written));
      }
    }

    /** A row of no lot serves an instrument, a place, or an action about something named. */
    private void checkWithoutLot() {
      boolean ofPlace = What.on(sheet, cell("what")).filter(Logged::ofPlace).isPresent();
      boolean aboutItem = ofPlace || sheet == Sheet.ACTIONS;
      if (sheet != Sheet.INSTRUMENTS && (!aboutItem || cell("item").isEmpty())) {
        stop("lot", "lot", say("reading.lot.none", "no lot"), wanted(ofPlace, aboutItem));
      }
    }

    private Optional<Moment> time(String column) {
      Times.Result result = Times.read(cell(column), hand.zone());
      if (result instanceof Times.Result.Wrong wrong) {
        stop(wrong.rule(), column, wrong.found(), wrong.expected());
        return Optional.empty();
      }
      return Optional.of(((Times.Result.Read) result).moment());
    }

    private Optional<What> what() {
      Optional<What> what = What.on(sheet, cell("what"));
      if (what.isEmpty()) {
        String choices = What.on(sheet).stream().map(What::word).collect(Collectors.joining(", "));
        stop("what", "what", orNothing("what"), say("reading.one-of", "one of {0}", choices));
      }
      return what;
    }

    private void checkCorrects() {
      String corrects = cell("corrects");
      if (!corrects.isEmpty() && !CORRECTS.matcher(corrects).matches()) {
        stop(
            "correction",
            "corrects",
            Message.of(corrects),
            say("reading.corrects", "file:line of the entry that this one replaces"));
      }
    }

    private Optional<Quantity> quantity(What what) {
      return new AmountReader(hand, what, cell("value"), cell("unit"), this::stop).read();
    }

    private static Message wanted(boolean ofPlace, boolean aboutItem) {
      if (!aboutItem) {
        return say("reading.lot.wanted", "a lot");
      }
      return ofPlace
          ? say("reading.lot.or-place", "a lot, or a place as the item")
          : say("reading.lot.or-item", "a lot, or what it is about as the item");
    }

    /** A missing initial, instrument, item or word keeps the lot; the value itself is used. */
    private void checkFilled(What what) {
      if (cell("by").isEmpty()) {
        faults.add(
            Fault.stop(
                "initials",
                lot,
                place.column("by"),
                say("reading.no-initials", "no initials"),
                say("reading.who", "who wrote this")));
      }
      if ((sheet.step().isPresent() || sheet == Sheet.INSTRUMENTS)
          && (what.shape().needsInstrument() || what == What.HUMIDITY)
          && cell("instrument").isEmpty()) {
        faults.add(
            Fault.stop(
                "instrument",
                lot,
                place.column("instrument"),
                say("reading.no-instrument", "no instrument"),
                say("reading.which", "which one read it")));
      }
      checkWords(what);
    }

    private void checkWords(What what) {
      List<String> choices = what.shape().choices();
      if (!choices.isEmpty() && !choices.contains(cell("value").toLowerCase(Locale.ROOT))) {
        stop("value", "value", orNothing("value"), Message.of(Listing.or(choices)));
      }
      if (what.shape() == Shape.WORDS && !hasWords(what)) {
        stop(
            "value", "value", say("words.nothing", "nothing"), say("reading.the", "the {0}", what));
      }
      if (what.shape() == Shape.ITEM && cell("item").isEmpty()) {
        stop(
            "item",
            "item",
            say("words.nothing", "nothing"),
            say("reading.what-or-where", "what or where, for \"{0}\"", what));
      }
    }

    /** A product may be named as the item; what was found, done or meant is told in words. */
    private boolean hasWords(What what) {
      String second = what == What.PRODUCT ? "item" : "note";
      return !cell("value").isEmpty() || !cell(second).isEmpty();
    }

    private String cell(String column) {
      return cells.getOrDefault(column, "");
    }

    private Message orNothing(String column) {
      return cell(column).isEmpty() ? say("words.nothing", "nothing") : Message.of(cell(column));
    }

    private void stop(String rule, String column, Message found, Message expected) {
      usable = false;
      faults.add(Fault.stop(rule, lot, place.column(column), found, expected));
    }
  }
}
