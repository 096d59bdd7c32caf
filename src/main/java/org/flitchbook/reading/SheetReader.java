package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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
  private final EntryReader entryReader;
  private final List<Fault> faults;
  private final List<Entry> entries = new ArrayList<>();
  private final Map<String, Integer> columns = new LinkedHashMap<>();
  private int rows;
  private int width;

  private SheetReader(String name, Sheet sheet, Hand hand, List<Fault> faults) {
    this.name = name;
    this.faults = faults;
    this.entryReader = new EntryReader(name, sheet, hand, faults);
  }

  /** The entries of one sheet; what can't be used is added to the faults. */
  static FileRead read(
      SourceFile file, Sheet sheet, Hand hand, List<Entry> entries, List<Fault> faults) {
    SheetReader reader = new SheetReader(file.name(), sheet, hand, faults);
    faults.addAll(Tables.read(file, Layout.OPEN, reader));
    if (reader.width > 0 && reader.rows == 0) {
      faults.add(
          Fault.note(
              "no rows",
              "",
              Place.of(file.name(), 1),
              say("reading.rows.none", "a heading alone"),
              say("reading.rows.wanted", "rows under the heading")));
    }
    entries.addAll(reader.entries);
    return new FileRead(
        file.name(),
        "sheet",
        file.content().remaining(),
        file.sha256(),
        reader.rows,
        reader.entries.size());
  }

  @Override
  public void heading(Row heading, char delimiter) {
    width = heading.cells().size();
    for (int index = 0; index < width; index++) {
      column(heading, index);
    }
    for (String wanted : REQUIRED) {
      if (!columns.containsKey(wanted)) {
        faults.add(
            Fault.broken(
                "missing column",
                Place.of(name, heading.line()).column(wanted),
                say(
                    "reading.column.missing",
                    "no column \"{0}\" in {1}",
                    wanted,
                    Listing.commas(heading.cells())),
                say("reading.column.required", "the columns {0}", Listing.commas(REQUIRED))));
      }
    }
    entryReader.delimiter(delimiter);
  }

  private void column(Row heading, int index) {
    String word = heading.cell(index).toLowerCase(Locale.ROOT);
    if (!word.isEmpty() && columns.putIfAbsent(word, index) != null) {
      faults.add(
          Fault.broken(
              "column twice",
              Place.of(name, heading.line()).column(word),
              say("reading.column.twice", "the column \"{0}\" twice", word),
              say("reading.column.once", "each column once")));
    }
  }

  @Override
  public void row(Row row) {
    rows++;
    if (!columns.keySet().containsAll(REQUIRED)) {
      return;
    }
    Map<String, String> cells = new LinkedHashMap<>();
    columns.forEach((word, index) -> cells.put(word, row.cell(index)));
    String lot = cells.getOrDefault("lot", "");
    List<String> nameless = row.cellsUnder(index -> !columns.containsValue(index));
    if (!row.cellsUnder(index -> index >= width).isEmpty()) {
      entryReader.tooWide(row, width, lot);
    } else if (!nameless.isEmpty()) {
      entryReader.underNoWord(row, nameless, lot);
    } else {
      entryReader.read(row.line(), cells).ifPresent(entries::add);
    }
  }
}
