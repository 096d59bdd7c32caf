package org.flitchbook.change;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;
import org.flitchbook.table.Layout;
import org.flitchbook.table.Row;
import org.flitchbook.table.Rows;
import org.flitchbook.table.Tables;

/**
 * The rows of a sheet that were added, removed or changed. Rows are matched by the longest common
 * sequence; a removed row and an added one between the same neighbours are one changed row if more
 * of their cells agree than differ.
 */
final class SheetChanges {

  /**
   * Comparing more rows than that with each other would take long: then it is compared as a log is.
   */
  private static final int MOST_PAIRS = 4_000_000;

  private final String file;
  private final List<Line> before;
  private final List<Line> now;
  private final List<Change> changes = new ArrayList<>();

  private SheetChanges(String file, List<Line> before, List<Line> now) {
    this.file = file;
    this.before = before;
    this.now = now;
  }

  /** The changes; empty where one of the files can't be read as a table. */
  static Optional<List<Change>> between(Optional<SourceFile> before, Optional<SourceFile> now) {
    Optional<List<Line>> old = lines(before);
    Optional<List<Line>> current = lines(now);
    if (old.isEmpty() || current.isEmpty()) {
      return Optional.empty();
    }
    String name = now.or(() -> before).orElseThrow().name();
    SheetChanges sheet = new SheetChanges(name, old.get(), current.get());
    if ((long) old.get().size() * current.get().size() > MOST_PAIRS) {
      return Optional.of(LogChanges.between(before.orElseThrow(), now.orElseThrow()));
    }
    sheet.compare();
    sheet.changes.sort(Comparator.comparingInt(change -> change.place().line()));
    return Optional.of(sheet.changes);
  }

  /** Those under the heading; a file that isn't there has no rows. */
  private static Optional<List<Line>> lines(Optional<SourceFile> file) {
    Collected collected = new Collected();
    boolean broken =
        file.stream()
            .flatMap(each -> Tables.read(each, Layout.OPEN, collected).stream())
            .anyMatch(fault -> fault.is(Severity.BROKEN));
    return broken ? Optional.empty() : Optional.of(collected.lines);
  }

  private void compare() {
    int[][] longest = longest();
    List<Line> removed = new ArrayList<>();
    List<Line> added = new ArrayList<>();
    int i = 0;
    int j = 0;
    while (i < before.size() || j < now.size()) {
      if (i < before.size() && j < now.size() && before.get(i).says(now.get(j))) {
        list(removed, added);
        i++;
        j++;
      } else if (j == now.size() || (i < before.size() && longest[i + 1][j] >= longest[i][j + 1])) {
        removed.add(before.get(i++));
      } else {
        added.add(now.get(j++));
      }
    }
    list(removed, added);
  }

  /** How many rows are common to both from each pair of rows on. */
  private int[][] longest() {
    int[][] longest = new int[before.size() + 1][now.size() + 1];
    for (int i = before.size() - 1; i >= 0; i--) {
      for (int j = now.size() - 1; j >= 0; j--) {
        longest[i][j] =
            before.get(i).says(now.get(j))
                ? longest[i + 1][j + 1] + 1
                : Math.max(longest[i + 1][j], longest[i][j + 1]);
      }
    }
    return longest;
  }

  private void list(List<Line> removed, List<Line> added) {
    for (Line old : removed) {
      Optional<Line> like = added.stream().filter(old::isLike).findFirst();
      like.ifPresent(added::remove);
      changes.add(change(Optional.of(old), like));
    }
    added.forEach(row -> changes.add(change(Optional.empty(), Optional.of(row))));
    removed.clear();
    added.clear();
  }

  private Change change(Optional<Line> old, Optional<Line> row) {
    String columns = old.flatMap(was -> row.map(was::differing)).orElse("");
    Line was = old.or(() -> row).orElseThrow();
    Line is = row.orElse(was);
    return Change.of(
        new Place(file, was.number(), columns),
        new Place(file, is.number(), columns),
        old.map(Line::shown),
        row.map(Line::shown));
  }

  /**
   * One row.
   *
   * @param number the physical line, from 1
   * @param cells the filled cells by their column's word, or by its number where it has no word
   */
  private record Line(int number, Map<String, String> cells) {

    Message shown() {
      return Message.of(String.join(", ", cells.values()));
    }

    boolean says(Line other) {
      return cells.equals(other.cells);
    }

    /** Whether more of the cells agree than differ. */
    boolean isLike(Line other) {
      long agree = cells.entrySet().stream().filter(other.cells.entrySet()::contains).count();
      return 2 * agree > Math.max(cells.size(), other.cells.size());
    }

    /** The columns in which two rows differ. */
    String differing(Line other) {
      Map<String, String> all = new LinkedHashMap<>(cells);
      other.cells.forEach(all::putIfAbsent);
      return all.keySet().stream()
          .filter(column -> !Objects.equals(cells.get(column), other.cells.get(column)))
          .collect(Collectors.joining(", "));
    }
  }

  private static final class Collected implements Rows {

    private final List<Line> lines = new ArrayList<>();
    private List<String> columns = List.of();

    @Override
    public void heading(Row heading, char delimiter) {
      columns = heading.cells();
    }

    @Override
    public void row(Row row) {
      Map<String, String> cells = new LinkedHashMap<>();
      for (int i = 0; i < row.cells().size(); i++) {
        if (!row.cell(i).isEmpty()) {
          cells.put(column(i), row.cell(i));
        }
      }
      lines.add(new Line(row.line(), cells));
    }

    private String column(int index) {
      String word = index < columns.size() ? columns.get(index).toLowerCase(Locale.ROOT) : "";
      boolean isOwn = !word.isEmpty() && columns.indexOf(columns.get(index)) == index;
      return isOwn ? word : "column " + (index + 1);
    }
  }
}
