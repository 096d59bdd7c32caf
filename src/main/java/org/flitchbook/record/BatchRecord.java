package org.flitchbook.record;

import java.util.List;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Product;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.Step;

/** The record of one lot: the first page, then step by step what was written and measured. */
final class BatchRecord extends LotSection {

  private final ReadingTables tables;
  private final TotalsSection totals;

  BatchRecord(DayJudged day, Judgement judgement) {
    super(day, judgement);
    this.tables = new ReadingTables(day, judgement);
    this.totals = new TotalsSection(day, judgement);
  }

  Document document(Carried carried) {
    Documents documents = new Documents(day);
    Blocks blocks =
        new Blocks()
            .add(new PageOne(day, judgement).blocks())
            .add(new Block.PageBreak())
            .add(documents.changes());
    steps(blocks);
    end(blocks);
    blocks.add(documents.evidence(carried));
    String none = say("record.batch.no-product", "no product");
    return documents.record(
        say("record.batch.title", "Batch record {0}", lot.code()),
        lot.product().map(Product::name).orElse(none),
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

  private void steps(Blocks blocks) {
    Message cure =
        Message.say("record.batch.entries-of-cure", "Entries of receipt, cure and turning");
    blocks
        .add(heading(title(Step.CURE)))
        .add(totals.cure())
        .add(new HoldChart(day, judgement).block())
        .add(entries(Sheet.CURE, cure))
        .add(tables.ofPlace(Step.CURE));
    for (Step step : List.of(Step.SOAK, Step.DRY)) {
      if (lot.product().map(p -> p.steps().contains(step)).orElse(true)) {
        blocks.add(heading(title(step))).add(entries(step));
      }
    }
    blocks
        .add(heading(title(Step.SMOKE)))
        .add(new CoreChart(day, judgement).blocks())
        .add(new CoreSection(day, judgement).blocks())
        .add(entries(Step.SMOKE))
        .add(entries(Step.CHILL));
  }

  private List<Block> entries(Step step) {
    Message caption = Message.say("record.batch.entries-of-step", "Entries of the step {0}", step);
    Sheet sheet = Sheet.parse(step.word()).orElseThrow();
    return new Blocks().add(entries(sheet, caption)).add(tables.ofPlace(step)).list();
  }

  private Block entries(Sheet sheet, Message caption) {
    return tables.entries(sheet, caption).orElseGet(() -> nothingOf(caption));
  }

  private void end(Blocks blocks) {
    Message dispatch =
        Message.say("record.batch.entries-of-dispatch", "Entries of packing and dispatch");
    Message laboratory = Message.say("record.batch.laboratory", "Laboratory results");
    blocks
        .add(heading(WARM))
        .add(totals.warm())
        .add(heading("record.batch.weights", "Weights and mass balance"))
        .add(totals.masses())
        .add(heading(DEVIATIONS))
        .add(new DeviationSection(day, judgement).brief())
        .add(heading(title(Step.RELEASE)))
        .add(entries(Sheet.DISPATCH, dispatch))
        .add(tables.entries(Sheet.LAB, laboratory))
        .add(SigningBoxes.secondOfLot(day, judgement))
        .add(heading("record.batch.probes", "Probes and instruments"))
        .add(tables.blocks())
        .add(heading(DOUBTS))
        .add(new EvidenceSection(day, judgement).doubts())
        .add(heading("record.batch.monitoring", "Limits, monitoring and planned action"))
        .add(new PlanSection(day, judgement).blocks());
  }
}
