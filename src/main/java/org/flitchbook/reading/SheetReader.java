package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Listing;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.table.Layout;
import org.flitchbook.table.Row;
import org.flitchbook.table.Rows;
import org.flitchbook.table.Tables;

/** Reads one sheet: columns by name, in any order, case ignored. */
final class SheetReader implements Rows {

  static final List<String> REQUIRED =
      List.of("lot", "time", "what", "item", "value", "unit", "by", "instrument", "note");
  static final List<String> OPTIONAL = List.of("piece", "entered", "corrects");

  private final String name;
  private final Sheet sheet;
  private final Hand hand;

  /** Many times what people write down in a day. */
  private static final int MOST_ROWS = 5_000;

  /** Three times what a cell of a spreadsheet can hold. */
  private static final int LONGEST_CELL = 100_000;

  private final List<Fault> faults = new ArrayList<>();
  private final List<Entry> entries = new ArrayList<>();
  private final Map<String, Integer> columns = new LinkedHashMap<>();
  private char delimiter;
  private int rows;
  private int width;
  private boolean hasEnough;

  private SheetReader(String name, Sheet sheet, Hand hand) {
    this.name = name;
    this.sheet = sheet;
    this.hand = hand;
  }

  static FileRead.Content read(SourceFile file, Sheet sheet, Hand hand) {
    SheetReader reader = new SheetReader(file.name(), sheet, hand);
    reader.faults.addAll(Tables.read(file, Layout.OPEN, reader));
    if (reader.width > 0 && reader.rows == 0) {
      reader.faults.add(
          Fault.note(
              "no rows",
              "",
              Place.of(file.name(), 1),
              say("reading.rows.none", "a heading alone"),
              say("reading.rows.wanted", "rows under the heading")));
    }
    return new FileRead.Content(
        FileRead.of(file, "sheet", reader.rows, reader.entries.size()),
        reader.entries,
        List.of(),
        reader.faults);
  }

  @Override
  public void heading(Row heading, char delimiter) {
    this.delimiter = delimiter;
    width = heading.cells().size();
    Place place = Place.of(name, heading.line());
    for (int index = 0; index < width; index++) {
      column(heading.cell(index).toLowerCase(Locale.ROOT), index, place);
    }
    for (String wanted : REQUIRED) {
      if (!columns.containsKey(wanted)) {
        faults.add(
            Fault.broken(
                "missing column",
                place.column(wanted),
                say(
                    "reading.column.missing",
                    "no column \"{0}\" in {1}",
                    wanted,
                    Listing.commas(heading.cells())),
                say("reading.column.required", "the columns {0}", Listing.commas(REQUIRED))));
      }
    }
  }

  private void column(String word, int index, Place heading) {
    if (!word.isEmpty() && columns.putIfAbsent(word, index) != null) {
      faults.add(LogColumns.twice(word, heading));
    }
  }

  @Override
  public void row(Row row) {
    rows++;
    if (tooMuch(row).isPresent()) {
      faults.add(tooMuch(row).get());
      hasEnough = true;
      return;
    }
    if (!columns.keySet().containsAll(REQUIRED)) {
      return;
    }
    Map<String, String> cells = new LinkedHashMap<>();
    columns.forEach((word, index) -> cells.put(word, row.cell(index)));
    EntryReader reader = new EntryReader(sheet, hand, Place.of(name, row.line()), cells);
    List<String> nameless = row.cellsUnder(index -> !columns.containsValue(index));
    if (!row.cellsUnder(index -> index >= width).isEmpty()) {
      tooWide(row, reader);
    } else if (!nameless.isEmpty()) {
      reader.stop(
          "cell under no word",
          "",
          say(
              "reading.row.nameless",
              "cells under no word of the heading ({0})",
              String.join(", ", nameless)),
          say("reading.row.words-above", "a word above every cell that is filled"));
    } else {
      reader.entry().ifPresent(entries::add);
    }
    faults.addAll(reader.faults());
  }

  @Override
  public boolean haveEnough() {
    return hasEnough;
  }

  /** What nobody has written by hand. */
  private Optional<Fault> tooMuch(Row row) {
    Place place = Place.of(name, row.line());
    if (rows > MOST_ROWS) {
      return Optional.of(
          Fault.broken(
              "too many rows",
              place,
              say("reading.rows.many", "more than {0} rows in one sheet", MOST_ROWS),
              say("reading.rows.most", "what was written down on one day")));
    }
    return row.cells().stream().allMatch(cell -> cell.length() <= LONGEST_CELL)
        ? Optional.empty()
        : Optional.of(
            Fault.broken(
                "cell too long",
                place,
                say("reading.cell.long", "more than {0} letters in one cell", LONGEST_CELL),
                say("reading.cell.short", "a cell of a few words, and quotes that close")));
  }

  private void tooWide(Row row, EntryReader reader) {
    reader.stop(
        "row too wide",
        "",
        say(
            "reading.row.cells",
            "{0} cells ({1})",
            row.cells().size(),
            String.join(delimiter + " ", row.cells())),
        Numbers.noBareComma(
            delimiter, say("reading.row.as-heading", "{0} cells as in the heading", width)));
  }
}
