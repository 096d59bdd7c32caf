package org.flitchbook.change;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.flitchbook.change.SheetRows.Line;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;

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

  /** A file that isn't there has no rows. */
  private static Optional<List<Line>> lines(Optional<SourceFile> file) {
    return file.isEmpty() ? Optional.of(List.of()) : SheetRows.of(file.get()).map(SheetRows::lines);
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
}
