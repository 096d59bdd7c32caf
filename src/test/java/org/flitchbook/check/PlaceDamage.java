package org.flitchbook.check;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;

/**
 * What happens to the log of a place, from one minute to another. Where it hides readings, it hides
 * those of the whole time that the place was outside.
 */
enum PlaceDamage {
  AS_IT_IS("as it is", (lot, window) -> {}),
  UNITS("a unit beside each number", PlaceDamage::units),
  OTHER_UNIT("another unit beside each number", PlaceDamage::otherUnit),
  SCIENTIFIC("numbers as programs write them", PlaceDamage::scientific),
  SIGNS("numbers with signs or words", PlaceDamage::signs),
  OFF_RANGE("words for off the range", PlaceDamage::offRange),
  COMMA("a decimal comma", PlaceDamage::comma),
  OTHER_WORDS("words that nobody knows", PlaceDamage::otherWords),
  NOTHING("words for nothing", PlaceDamage::nothing),
  CODES("codes of sensors", PlaceDamage::codes),
  COLD("a cold that no place has", PlaceDamage::cold),
  SILENT("rows are missing", PlaceDamage::silent),
  SKIPPED("skip is too large", PlaceDamage::skipped),
  HEADED("a row without a reading is the heading", PlaceDamage::headed),
  NUMBERED("skip is too large, without a heading", PlaceDamage::numbered);

  /** Minutes, the last one not counted. */
  record Window(int from, int until) {

    boolean holds(PlaceLot.Row row) {
      return row.minute() >= from && row.minute() < until;
    }
  }

  private final String told;

  @SuppressWarnings("ImmutableEnumChecker")
  private final BiConsumer<PlaceLot, Window> damage;

  PlaceDamage(String told, BiConsumer<PlaceLot, Window> damage) {
    this.told = told;
    this.damage = damage;
  }

  String told() {
    return told;
  }

  /** Whether nothing that was read is lost in it, so that a short one leaves a good lot good. */
  boolean isHonest() {
    return List.of(AS_IT_IS, UNITS, SCIENTIFIC, NOTHING, CODES, SILENT).contains(this);
  }

  /** Whether nobody can see what the place was like meanwhile, however well it is read. */
  private boolean blinds() {
    return List.of(NOTHING, CODES, SILENT).contains(this);
  }

  /**
   * Of a lot that misses its limit the whole time outside is damaged; and where nobody can see that
   * any more, so much that it is longer than the plan lets pass.
   */
  void on(PlaceLot lot) {
    int longer = lot.random().nextInt(1, 20);
    int until =
        !lot.misses()
            ? lot.from() + lot.random().nextInt(20, PlaceLot.EVERY - 20)
            : blinds()
                ? Math.max(lot.until(), lot.from() + PlaceLot.EVERY) + longer
                : lot.until() + longer;
    damage.accept(lot, new Window(lot.from() - (lot.misses() ? longer : 0), until));
  }

  private static void write(PlaceLot lot, Window window, UnaryOperator<String> cell) {
    lot.rows(
        lot.rows().stream()
            .map(
                row ->
                    window.holds(row)
                        ? new PlaceLot.Row(row.minute(), cell.apply(row.cell()))
                        : row)
            .toList());
  }

  private static String one(PlaceLot lot, String... of) {
    return of[lot.random().nextInt(of.length)];
  }

  private static void units(PlaceLot lot, Window window) {
    String bare = lot.unit().replace("°", "");
    String unit = one(lot, " " + lot.unit(), lot.unit(), " " + bare, bare);
    write(lot, window, cell -> cell + unit);
  }

  private static void otherUnit(PlaceLot lot, Window window) {
    String unit = lot.unit().equals("°F") ? one(lot, " °C", "C", "℃") : one(lot, " °F", "F");
    write(lot, window, cell -> cell + unit);
  }

  private static void scientific(PlaceLot lot, Window window) {
    int form = lot.random().nextInt(3);
    write(
        lot,
        window,
        cell ->
            form == 0
                ? cell + "00000000000001"
                : form == 1 ? cell.replace(".", "") + "e-1" : cell.replace(".0", "."));
  }

  private static void signs(PlaceLot lot, Window window) {
    String sign =
        one(lot, ">%s", "<%s", "~%s", "%s*", "%s ALARM", "%s (high)", "%s?", "=%s", "%s %s");
    write(lot, window, cell -> sign.replace("%s", cell));
  }

  private static void offRange(PlaceLot lot, Window window) {
    String word = one(lot, "HI", "LO", "OVER", "UNDER", "OL", "HHH", "inf", "Out of range");
    write(lot, window, cell -> word);
  }

  private static void comma(PlaceLot lot, Window window) {
    boolean bare = lot.random().nextInt(3) == 0;
    write(lot, window, cell -> bare ? cell.replace('.', ',') : '"' + cell.replace('.', ',') + '"');
  }

  private static void otherWords(PlaceLot lot, Window window) {
    String word = one(lot, "warm", "ALARM", "#####", "****", "too high", "#VALUE!");
    write(lot, window, cell -> word);
  }

  private static void nothing(PlaceLot lot, Window window) {
    String word = one(lot, "ERR", "---", "NaN", "", "n/a", "no sensor", "null", "OPEN", "--.-");
    write(lot, window, cell -> word);
  }

  private static void codes(PlaceLot lot, Window window) {
    String code =
        lot.unit().equals("%")
            ? "NaN"
            : one(
                lot,
                "-127",
                "-127.0",
                "-273.2",
                "-273.15",
                "-242.02",
                "-200",
                "-99.9",
                "-888.88",
                "-999",
                "-9999",
                "-327.68",
                "2147483647",
                "999.9",
                "3276.7",
                "32767");
    write(lot, window, cell -> code);
  }

  private static void cold(PlaceLot lot, Window window) {
    String level =
        lot.unit().equals("%") ? one(lot, "-1.0", "655.3", "400") : one(lot, "-250.5", "-83.1");
    write(lot, window, cell -> level);
  }

  private static void silent(PlaceLot lot, Window window) {
    lot.rows(lot.rows().stream().filter(row -> !window.holds(row)).toList());
  }

  private static void skipped(PlaceLot lot, Window window) {
    lot.skippedUntil(window.until());
  }

  private static void headed(PlaceLot lot, Window window) {
    String word = one(lot, "NaN", "---", "ERR", "38.9 F");
    write(lot, new Window(window.until() - 10, window.until()), cell -> word);
    lot.headedByRow(window.until());
  }

  private static void numbered(PlaceLot lot, Window window) {
    lot.numbered(window.until());
  }
}
