package org.flitchbook.check;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.flitchbook.input.SourceFile;

/** The folders of the days, as they are filled. */
final class HonestSheets {

  private static final String HEAD =
      "lot,time,what,item,value,unit,by,instrument,note,piece,entered,corrects\n";

  /** One row; a row that replaces another one is written under it. */
  private record Row(ZonedDateTime time, String text, Optional<String> replaced) {}

  private final SplittableRandom random;
  private final Set<Habit> habits;
  private final NavigableMap<LocalDate, NavigableMap<String, List<Row>>> rows = new TreeMap<>();
  private final NavigableMap<LocalDate, List<SourceFile>> logs = new TreeMap<>();
  private final NavigableMap<LocalDate, List<String>> layouts = new TreeMap<>();

  HonestSheets(SplittableRandom random, Set<Habit> habits) {
    this.random = random;
    this.habits = habits;
  }

  /**
   * Adds a row.
   *
   * @param cells from {@code what} on, up to the note at the most
   */
  void write(ZonedDateTime at, String sheet, String lot, String piece, String cells) {
    add(at, sheet, row(at, lot, piece, cells), Optional.empty());
  }

  /** A row that was miswritten, and the one that replaces it. */
  void correct(
      ZonedDateTime at, String sheet, String lot, String piece, String wrong, String right) {
    String text = row(at, lot, piece, wrong);
    add(at, sheet, text, Optional.empty());
    add(at, sheet, row(at, lot, piece, right), Optional.of(text));
  }

  private void add(ZonedDateTime at, String sheet, String text, Optional<String> replaced) {
    boolean night = habits.contains(Habit.NIGHT_IN_ITS_DAY) && at.getHour() < 5;
    LocalDate day = at.toLocalDate().minusDays(night ? 1 : 0);
    rows.computeIfAbsent(day, any -> new TreeMap<>())
        .computeIfAbsent(sheet, any -> new ArrayList<>())
        .add(new Row(at, text, replaced));
  }

  private String row(ZonedDateTime at, String lot, String piece, String cells) {
    List<String> filled = new ArrayList<>(List.of(cells.split(",", -1)));
    while (filled.size() < 7) {
      filled.add("");
    }
    String entered = "";
    if (habits.contains(Habit.LATE_ENTRIES)) {
      boolean late = random.nextInt(6) == 0 && filled.get(6).isEmpty();
      int minutes = late ? 20 + random.nextInt(600) : random.nextInt(8);
      entered = time(at.plusMinutes(minutes));
      filled.set(6, late ? "written up later: both hands in the cure" : filled.get(6));
    }
    return "%s,%s,%s,%s,%s".formatted(lot, time(at), String.join(",", filled), piece, entered);
  }

  /** In the doubled hour with its offset. */
  static String time(ZonedDateTime at) {
    boolean twice = at.getZone().getRules().getValidOffsets(at.toLocalDateTime()).size() > 1;
    String pattern = twice ? "yyyy-MM-dd HH:mmXXX" : "yyyy-MM-dd HH:mm";
    return DateTimeFormatter.ofPattern(pattern, Locale.ROOT).format(at);
  }

  /** Adds a log, and how it is read. */
  void log(LocalDate day, String name, String csv, String layout) {
    SourceFile file = SourceFile.of(day + "/" + name, csv.getBytes(UTF_8));
    logs.computeIfAbsent(day, any -> new ArrayList<>()).add(file);
    layouts.computeIfAbsent(day, any -> new ArrayList<>()).add(layout);
  }

  /** Every file, by its day. */
  NavigableMap<LocalDate, List<SourceFile>> days() {
    NavigableMap<LocalDate, List<SourceFile>> days = new TreeMap<>();
    logs.forEach((day, files) -> days.put(day, new ArrayList<>(files)));
    layouts.forEach(
        (day, entries) -> {
          String text = "{\"logs\": [" + String.join(",\n", entries) + "]}";
          days.get(day).add(SourceFile.of(day + "/logs.json", text.getBytes(UTF_8)));
        });
    rows.forEach(
        (day, sheets) ->
            sheets.forEach(
                (sheet, written) ->
                    days.computeIfAbsent(day, any -> new ArrayList<>())
                        .add(file(day, sheet, written))));
    return days;
  }

  private static SourceFile file(LocalDate day, String sheet, List<Row> written) {
    List<Row> inOrder = written.stream().sorted(Comparator.comparing(Row::time)).toList();
    List<String> texts = inOrder.stream().map(Row::text).toList();
    StringBuilder csv = new StringBuilder(HEAD);
    for (Row row : inOrder) {
      String corrects =
          row.replaced().map(old -> sheet + ".csv:" + (2 + texts.indexOf(old))).orElse("");
      csv.append(row.text()).append(',').append(corrects).append('\n');
    }
    return SourceFile.of(day + "/" + sheet + ".csv", csv.toString().getBytes(UTF_8));
  }
}
