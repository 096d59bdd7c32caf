package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.document.Block;
import org.flitchbook.document.Paragraph;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Sums;

/** The weights step by step, and what became of the last of them. */
final class WeightSection {

  private final Lot lot;

  WeightSection(Lot lot) {
    this.lot = lot;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(weights());
    balance().ifPresent(blocks::add);
    return blocks;
  }

  private Block weights() {
    Grid grid =
        new Grid("Weights")
            .head("After", 10)
            .number("Weight", 8)
            .number("Of the weight before", 8)
            .number("Of the green weight", 8)
            .head("Where it stands", 14);
    Optional<Entry> green = lot.first(What.GREEN_WEIGHT);
    Optional<Entry> before = Optional.empty();
    for (Entry entry : lot.entries()) {
      if (isWeight(entry)) {
        grid.row(
            name(entry),
            entry.shown(),
            before.map(last -> percent(entry, last)).orElse("–"),
            green.map(first -> percent(entry, first)).orElse("–"),
            entry.place().toString());
        before = Optional.of(entry);
      }
    }
    return grid.isEmpty()
        ? new Paragraph(Words.of("Weights: " + Phrases.NOT_RECORDED))
        : grid.table();
  }

  private static boolean isWeight(Entry entry) {
    return entry.is(What.GREEN_WEIGHT) || entry.is(What.WEIGHT) || entry.is(What.GLAZED);
  }

  private static String name(Entry entry) {
    String piece = entry.piece().isEmpty() ? "" : ", piece " + entry.piece();
    return (entry.is(What.WEIGHT) ? entry.sheet().word() : entry.what().word()) + piece;
  }

  private static String percent(Entry now, Entry then) {
    return Sums.yieldOf(now.amount(), then.amount()).value().value().rounded(1) + " %";
  }

  /** What was packed, cut off and thrown away against the last weight. */
  private Optional<Block> balance() {
    List<Entry> parts =
        lot.entries().stream()
            .filter(
                entry ->
                    entry.is(What.PACKED)
                        || entry.is(What.ENDS)
                        || entry.is(What.WASTE)
                        || entry.is(What.SAMPLE))
            .toList();
    Optional<Entry> last = lot.last(What.WEIGHT);
    if (parts.isEmpty() || last.isEmpty()) {
      return Optional.empty();
    }
    Ratio sum =
        parts.stream().map(entry -> entry.amount().inBase()).reduce(Ratio.ZERO, Ratio::plus);
    Quantity found = new Quantity(sum, Unit.GRAM);
    Quantity unexplained = last.get().amount().in(Unit.GRAM).minus(found);
    List<String> told =
        parts.stream().map(entry -> entry.what().word() + " " + entry.shown()).toList();
    return Optional.of(
        new Paragraph(
            Words.of(
                "Mass balance: "
                    + String.join(" + ", told)
                    + " = "
                    + found.shown()
                    + " of "
                    + last.get().shown()
                    + " after the "
                    + last.get().sheet().word()
                    + "; unexplained: "
                    + unexplained.shown()
                    + ".")));
  }
}
