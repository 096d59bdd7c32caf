package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
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

/**
 * Turns one row of a sheet into an entry, or into faults that say why it can't be used; all of them
 * are found, not only the first.
 */
final class EntryReader {

  private static final Pattern CORRECTS = Pattern.compile("[^:]+\\.csv:[1-9]\\d{0,8}");

  /** What a lot may be called, so that its name can be a file's name on any system. */
  private static final Pattern LOT = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_-]{0,31}");

  /** Names of devices on some systems, and of a day's other records. */
  private static final Pattern TAKEN =
      Pattern.compile("(?i)con|prn|aux|nul|(com|lpt)[0-9]|day|deviations");

  private final Sheet sheet;
  private final Hand hand;
  private final Place place;
  private final Map<String, String> cells;
  private final String lot;
  private final List<Fault> faults = new ArrayList<>();
  private boolean usable = true;

  EntryReader(Sheet sheet, Hand hand, Place place, Map<String, String> cells) {
    this.sheet = sheet;
    this.hand = hand;
    this.place = place;
    this.cells = cells;
    String written = cell("lot");
    this.lot = LOT.matcher(written).matches() && !isTaken(written) ? written : "";
  }

  private static boolean isTaken(String lot) {
    return TAKEN.matcher(lot).matches();
  }

  List<Fault> faults() {
    return faults;
  }

  Optional<Entry> entry() {
    checkLot();
    Optional<Moment> time = time("time");
    Optional<What> what = what();
    Optional<Moment> entered = cell("entered").isEmpty() ? Optional.empty() : time("entered");
    checkCorrects();
    Optional<Quantity> quantity = what.flatMap(known -> new AmountReader(this, hand, known).read());
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
      stop("lot", "lot", Message.of(written), lotName(written));
    }
  }

  private static Message lotName(String written) {
    return isTaken(written)
        ? say("reading.lot.taken", "another name: files of that name mean something else")
        : say("reading.lot.letters", "letters, digits, - and _ only, 32 at most");
  }

  /** A row of no lot serves an instrument, a place, or an action about something named. */
  private void checkWithoutLot() {
    boolean ofPlace = What.on(sheet, cell("what")).filter(What::isOfPlace).isPresent();
    boolean aboutItem = ofPlace || sheet == Sheet.ACTIONS;
    if (sheet != Sheet.INSTRUMENTS && (!aboutItem || cell("item").isEmpty())) {
      stop("lot", "lot", say("reading.lot.none", "no lot"), wanted(ofPlace, aboutItem));
    }
  }

  private Optional<Moment> time(String column) {
    return Times.read(
        cell(column), hand.zone(), (rule, found, expected) -> stop(rule, column, found, expected));
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
      fault(
          "initials",
          "by",
          say("reading.no-initials", "no initials"),
          say("reading.who", "who wrote this"));
    }
    if ((sheet.step().isPresent() || sheet == Sheet.INSTRUMENTS)
        && (what.shape().needsInstrument() || what == What.HUMIDITY)
        && cell("instrument").isEmpty()) {
      fault(
          "instrument",
          "instrument",
          say("reading.no-instrument", "no instrument"),
          say("reading.which", "which one read it"));
    }
    checkWords(what);
  }

  private void checkWords(What what) {
    List<String> choices = what.shape().choices();
    if (!choices.isEmpty() && !choices.contains(cell("value").toLowerCase(Locale.ROOT))) {
      stop("value", "value", orNothing("value"), Message.of(Listing.or(choices)));
    }
    if (what.shape() == Shape.WORDS && !hasWords(what)) {
      stop("value", "value", say("words.nothing", "nothing"), say("reading.the", "the {0}", what));
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

  String cell(String column) {
    return cells.getOrDefault(column, "");
  }

  Message orNothing(String column) {
    return cell(column).isEmpty() ? say("words.nothing", "nothing") : Message.of(cell(column));
  }

  /** The row can't be used. */
  void stop(String rule, String column, Message found, Message expected) {
    usable = false;
    fault(rule, column, found, expected);
  }

  private void fault(String rule, String column, Message found, Message expected) {
    faults.add(Fault.stop(rule, lot, place.column(column), found, expected));
  }
}
