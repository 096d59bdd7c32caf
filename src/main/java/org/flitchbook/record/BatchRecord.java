package org.flitchbook.record;

import java.util.List;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.message.Message;
import org.flitchbook.reading.FileRead;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.Step;

/** The record of one lot: the first page, then step by step what was written and measured. */
final class BatchRecord extends LotSection {

  private static final Message ENTRIES_OF_CURE =
      Message.say("record.batch.entries-of-cure", "Entries of receipt, cure and turning");

  private static final Message ENTRIES_OF_DISPATCH =
      Message.say("record.batch.entries-of-dispatch", "Entries of packing and dispatch");

  private final Entries entries;
  private final ReadingTables readings;
  private final List<FileRead> carried;

  BatchRecord(DayJudged day, Judgement judgement, List<FileRead> carried) {
    super(day, judgement);
    this.carried = carried;
    this.entries = new Entries(day, judgement);
    this.readings = new ReadingTables(day, judgement);
  }

  Document document() {
    Documents documents = new Documents(day);
    Blocks blocks =
        new Blocks()
            .add(new PageOne(day, judgement).blocks())
            .add(new Block.PageBreak())
            .add(documents.changes());
    cure(blocks);
    step(blocks, Step.SOAK);
    step(blocks, Step.DRY);
    heat(blocks);
    end(blocks);
    blocks.add(documents.evidence(carried));
    return documents.record(
        say("record.batch.title", "Batch record {0}", lot.code()),
        lot.product()
            .map(product -> product.name())
            .orElse(say("record.batch.no-product", "no product")),
        lot.code(),
        blocks);
  }

  /** The heading of the section about a step. */
  static Message title(Step step) {
    return switch (step) {
      case CURE -> Message.say("record.batch.cure", "Receipt and cure");
      case SOAK -> Message.say("record.batch.soak", "Soak");
      case DRY -> Message.say("record.batch.drying", "Drying");
      case SMOKE, CHILL -> Message.say("record.batch.heat", "Smoke and chill");
      case RELEASE -> Message.say("record.batch.dispatch", "Packing, review and distribution");
    };
  }

  private Block.Heading heading(Step step) {
    return heading(title(step));
  }

  private void cure(Blocks blocks) {
    blocks
        .add(heading(Step.CURE))
        .add(new CureSum(day, judgement).blocks())
        .add(new HoldChart(day, judgement).block())
        .add(entries(Sheet.CURE, ENTRIES_OF_CURE))
        .add(readings.ofPlace(Step.CURE));
  }

  private void step(Blocks blocks, Step step) {
    if (lot.product().map(p -> p.steps().contains(step)).orElse(true)) {
      blocks.add(heading(step));
      entries(blocks, step);
    }
  }

  private void heat(Blocks blocks) {
    blocks
        .add(heading(Step.SMOKE))
        .add(new CoreChart(day, judgement).blocks())
        .add(new CoreSection(day, judgement).blocks());
    entries(blocks, Step.SMOKE);
    entries(blocks, Step.CHILL);
  }

  private void entries(Blocks blocks, Step step) {
    Message caption = Message.say("record.batch.entries-of-step", "Entries of the step {0}", step);
    blocks
        .add(entries(Sheet.parse(step.word()).orElseThrow(), caption))
        .add(readings.ofPlace(step));
  }

  private Block entries(Sheet sheet, Message caption) {
    return entries.of(sheet, caption).orElseGet(() -> nothingOf(caption));
  }

  private void end(Blocks blocks) {
    TotalsSection totals = new TotalsSection(day, judgement);
    blocks
        .add(heading(WARM))
        .add(totals.warm())
        .add(heading("record.batch.weights", "Weights and mass balance"))
        .add(totals.masses())
        .add(heading(DEVIATIONS))
        .add(new DeviationSection(day, judgement).brief())
        .add(heading(Step.RELEASE))
        .add(entries(Sheet.DISPATCH, ENTRIES_OF_DISPATCH))
        .add(entries.of(Sheet.LAB, Message.say("record.batch.laboratory", "Laboratory results")))
        .add(heading("record.batch.probes", "Probes and instruments"))
        .add(readings.blocks())
        .add(heading(DOUBTS))
        .add(new EvidenceSection(day, judgement).doubts())
        .add(heading("record.batch.monitoring", "Limits, monitoring and planned action"))
        .add(new PlanSection(day, judgement).blocks());
  }
}
