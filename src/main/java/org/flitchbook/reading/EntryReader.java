package org.flitchbook.reading;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Shape;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.What;
import org.flitchbook.table.Row;

/** Turns one row of a sheet into an entry, or into a fault that says why it can't be used. */
final class EntryReader {

  /** Letters, digits, - and _; so a lot's name can be a file's name on any system. */
  private static final Pattern LOT = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_-]{0,31}");

  private static final Pattern CORRECTS = Pattern.compile("[^:]+\\.csv:[1-9]\\d{0,8}");

  private static final Set<String> SPOONS =
      Set.of(
          "tsp",
          "teaspoon",
          "teaspoons",
          "tbsp",
          "tablespoon",
          "tablespoons",
          "spoon",
          "spoons",
          "cup",
          "cups",
          "pinch",
          "pinches");

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
            row.cells().size() + " cells (" + String.join(delimiter + " ", row.cells()) + ")",
            width + " cells as in the heading" + decimalHint()));
  }

  private String decimalHint() {
    return delimiter == ',' ? "; a decimal comma can't stand bare in a comma file" : "";
  }

  Optional<Entry> read(int line, Map<String, String> cells) {
    return new Attempt(Place.of(file, line), cells).entry();
  }

  private static String knownLot(String lot) {
    return LOT.matcher(lot).matches() ? lot : "";
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
      if (written.isEmpty() && sheet != Sheet.INSTRUMENTS && cell("item").isEmpty()) {
        stop("lot", "lot", "no lot", "a lot, or a place as the item");
      } else if (!written.isEmpty() && lot.isEmpty()) {
        stop("lot", "lot", written, "letters, digits, - and _ only, 32 at most");
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
        stop("what", "what", orNothing("what"), "one of " + choices);
      }
      return what;
    }

    private void checkCorrects() {
      String corrects = cell("corrects");
      if (!corrects.isEmpty() && !CORRECTS.matcher(corrects).matches()) {
        stop("correction", "corrects", corrects, "file:line of the entry that this one replaces");
      }
    }

    private Optional<Quantity> quantity(What what) {
      Shape shape = what.shape();
      if (shape == Shape.MAYBE_MASS) {
        return cell("unit").isEmpty() ? Optional.empty() : amount(what, Dimension.MASS);
      }
      return shape.dimension().flatMap(dimension -> amount(what, dimension));
    }

    private Optional<Quantity> amount(What what, Dimension dimension) {
      Optional<BigDecimal> number = number(dimension);
      Optional<Unit> unit = unit(what, dimension);
      return number.flatMap(value -> unit.map(known -> Quantity.of(value, known)));
    }

    private Optional<BigDecimal> number(Dimension dimension) {
      Optional<BigDecimal> number = Numbers.read(cell("value"), hand.decimalMark());
      if (number.isEmpty()) {
        String comma =
            cell("value").indexOf(',') >= 0 ? "; a decimal comma is stated in the plan" : "";
        stop(
            "value",
            "value",
            orNothing("value"),
            dimension.words() + ", digits with a decimal " + mark() + comma);
      }
      return number;
    }

    private String mark() {
      return hand.decimalMark() == '.' ? "point" : "comma";
    }

    private Optional<Unit> unit(What what, Dimension dimension) {
      String written = cell("unit");
      if (SPOONS.contains(written.toLowerCase(Locale.ROOT))) {
        spoons(what, written);
        return Optional.empty();
      }
      Optional<Unit> unit = Unit.parse(written).filter(known -> known.dimension() == dimension);
      if (unit.isEmpty()) {
        stop("unit", "unit", orNothing("unit"), Unit.choices(dimension));
      }
      return unit;
    }

    private void spoons(What what, String written) {
      stop(
          "spoons",
          "unit",
          cell("value") + " " + written + " of " + what.word(),
          "a weight in "
              + Unit.choices(Dimension.MASS)
              + ": one teaspoon of the same curing salt weighs anything from 4.2 to 7.1 g");
    }

    /** A missing initial, instrument, item or word keeps the lot; the value itself is used. */
    private void checkFilled(What what) {
      if (cell("by").isEmpty()) {
        faults.add(
            Fault.stop("initials", lot, place.column("by"), "no initials", "who wrote this"));
      }
      if (sheet.step().isPresent()
          && what.shape().needsInstrument()
          && cell("instrument").isEmpty()) {
        faults.add(
            Fault.stop(
                "instrument",
                lot,
                place.column("instrument"),
                "no instrument",
                "which one read it"));
      }
      checkWords(what);
    }

    private void checkWords(What what) {
      List<String> choices = what.shape().choices();
      if (!choices.isEmpty() && !choices.contains(cell("value").toLowerCase(Locale.ROOT))) {
        stop("value", "value", orNothing("value"), String.join(" or ", choices));
      }
      if (what.shape() == Shape.WORDS && cell("value").isEmpty() && cell("note").isEmpty()) {
        stop("value", "value", "nothing", "the " + what.word());
      }
      if (what.shape() == Shape.ITEM && cell("item").isEmpty()) {
        stop("item", "item", "nothing", "what or where, for \"" + what.word() + "\"");
      }
    }

    private String cell(String column) {
      return cells.getOrDefault(column, "");
    }

    private String orNothing(String column) {
      return cell(column).isEmpty() ? "nothing" : cell(column);
    }

    private void stop(String rule, String column, String found, String expected) {
      usable = false;
      faults.add(Fault.stop(rule, lot, place.column(column), found, expected));
    }
  }
}
