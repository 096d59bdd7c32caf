package org.flitchbook.record;

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
  private final Phrases phrases;

  Entries(Lot lot, Phrases phrases) {
    this.lot = lot;
    this.phrases = phrases;
  }

  Optional<Block> of(Sheet sheet, String caption) {
    List<Entry> entries = lot.entries().stream().filter(entry -> entry.sheet() == sheet).toList();
    if (entries.isEmpty()) {
      return Optional.empty();
    }
    Grid grid =
        new Grid(phrases, caption)
            .head("record.head.time", 0)
            .head("record.head.what", 10)
            .head("record.head.item", 7)
            .number("record.head.value", 8)
            .head("record.head.by", 3)
            .head("record.head.with", 4)
            .head("record.head.note", 8)
            .head("record.head.where", 11);
    entries.forEach(entry -> grid.row(row(grid, entry)));
    return Optional.of(grid.table());
  }

  private Cell[] row(Grid grid, Entry entry) {
    List<Cell> cells = new ArrayList<>();
    cells.add(grid.cell(times(entry)));
    cells.add(grid.cell(phrases.what(entry)));
    cells.add(grid.cell(entry.item()));
    cells.add(new Cell(value(entry), Tone.PLAIN));
    cells.add(grid.cell(phrases.orNotRecorded(entry.by())));
    cells.add(grid.cell(entry.instrument()));
    cells.add(grid.cell(note(entry)));
    cells.add(grid.muted(entry.place().toString()));
    return cells.toArray(Cell[]::new);
  }

  private String times(Entry entry) {
    String event = phrases.time(entry.time().written());
    return entry
        .entered()
        .map(Moment::written)
        .map(time -> phrases.say("record.entries.typed", event, phrases.time(time)))
        .orElse(event);
  }

  private Text value(Entry entry) {
    List<Span> spans = new ArrayList<>();
    for (Correction each : lot.corrections()) {
      if (each.by().equals(entry)) {
        spans.add(phrases.bound().span(each.replaced().shown(), Style.STRUCK));
        spans.add(new Span(" ", Style.PLAIN));
      }
    }
    if (!entry.shown().isEmpty()) {
      spans.add(phrases.bound().span(entry.shown(), Style.PLAIN));
    }
    return new Text(spans);
  }

  private String note(Entry entry) {
    String other =
        String.join(
            ", ",
            entry.other().entrySet().stream()
                .filter(each -> !each.getValue().isEmpty())
                .map(each -> each.getKey() + " " + each.getValue())
                .sorted()
                .toList());
    String corrects =
        entry.corrects().isEmpty() ? "" : phrases.say("record.entries.corrects", entry.corrects());
    return String.join(
        "; ", List.of(entry.note(), corrects, other).stream().filter(t -> !t.isEmpty()).toList());
  }
}
