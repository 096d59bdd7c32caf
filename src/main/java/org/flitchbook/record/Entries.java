package org.flitchbook.record;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.document.Block;
import org.flitchbook.document.Cell;
import org.flitchbook.document.Span;
import org.flitchbook.document.Style;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.lot.Correction;
import org.flitchbook.lot.Lot;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Sheet;

/** The hand entries of a sheet in full, corrections with the old value struck. */
final class Entries {

  private final Lot lot;
  private final ZoneId zone;

  Entries(Lot lot, ZoneId zone) {
    this.lot = lot;
    this.zone = zone;
  }

  Optional<Block> of(Sheet sheet, String caption) {
    List<Entry> entries = lot.entries().stream().filter(entry -> entry.sheet() == sheet).toList();
    if (entries.isEmpty()) {
      return Optional.empty();
    }
    Grid grid =
        new Grid(caption)
            .head("Time", 0)
            .head("What", 10)
            .head("Item", 7)
            .number("Value", 8)
            .head("By", 3)
            .head("With", 4)
            .head("Note", 8)
            .head("Where it stands", 11);
    entries.forEach(entry -> grid.row(row(entry)));
    return Optional.of(grid.table());
  }

  private Cell[] row(Entry entry) {
    List<Cell> cells = new ArrayList<>();
    cells.add(Grid.cell(times(entry)));
    cells.add(
        Grid.cell(
            entry.what().word() + (entry.piece().isEmpty() ? "" : ", piece " + entry.piece())));
    cells.add(Grid.cell(entry.item()));
    cells.add(new Cell(value(entry), Tone.PLAIN));
    cells.add(Grid.cell(Grid.orNotRecorded(entry.by())));
    cells.add(Grid.cell(entry.instrument()));
    cells.add(Grid.cell(note(entry)));
    cells.add(Grid.muted(entry.place().toString()));
    return cells.toArray(Cell[]::new);
  }

  private String times(Entry entry) {
    String event = Phrases.time(entry.time().written(), zone);
    return entry
        .entered()
        .map(Moment::written)
        .map(time -> event + ", typed " + Phrases.time(time, zone))
        .orElse(event);
  }

  private Text value(Entry entry) {
    List<Span> spans = new ArrayList<>();
    for (Correction each : lot.corrections()) {
      if (each.by().equals(entry)) {
        spans.add(Bound.span(each.replaced().shown(), Style.STRUCK));
        spans.add(new Span(" ", Style.PLAIN));
      }
    }
    if (!entry.shown().isEmpty()) {
      spans.add(Bound.span(entry.shown(), Style.PLAIN));
    }
    return new Text(spans);
  }

  private static String note(Entry entry) {
    String other =
        String.join(
            ", ",
            entry.other().entrySet().stream()
                .filter(each -> !each.getValue().isEmpty())
                .map(each -> each.getKey() + " " + each.getValue())
                .sorted()
                .toList());
    String corrects = entry.corrects().isEmpty() ? "" : "corrects " + entry.corrects();
    return String.join(
        "; ", List.of(entry.note(), corrects, other).stream().filter(t -> !t.isEmpty()).toList());
  }
}
