package org.flitchbook.record;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.message.Message;
import org.flitchbook.reading.FileRead;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.Step;

/** The record of one lot: the first page, then step by step what was written and measured. */
final class BatchRecord {

  private final DayJudged day;
  private final Judgement judgement;
  private final Phrases phrases;
  private final Entries entries;
  private final PlaceReadings places;
  private final List<FileRead> carried;

  BatchRecord(DayJudged day, Judgement judgement, List<FileRead> carried) {
    this.day = day;
    this.judgement = judgement;
    this.carried = carried;
    this.phrases = day.phrases();
    this.places = new PlaceReadings(day, judgement.lot());
    this.entries = new Entries(judgement.lot(), phrases);
  }

  Document document() {
    String lot = judgement.lot().code();
    List<Block> blocks = new ArrayList<>(new PageOne(day, judgement).blocks());
    blocks.add(new Block.PageBreak());
    blocks.addAll(new FilingSection(day).changes());
    cure(blocks);
    step(blocks, Step.SOAK);
    step(blocks, Step.DRY);
    heat(blocks);
    end(blocks);
    return new Frame(day)
        .document(
            phrases.say("record.batch.title", "Batch record {0}", lot), product(), lot, blocks);
  }

  /** The heading of the section about a step, by key. */
  static Message section(Step step) {
    return switch (step) {
      case CURE -> say("record.batch.cure", "Receipt and cure");
      case SOAK -> say("record.batch.soak", "Soak");
      case DRY -> say("record.batch.drying", "Drying");
      case SMOKE, CHILL -> say("record.batch.heat", "Smoke and chill");
      case RELEASE -> say("record.batch.dispatch", "Packing, review and distribution");
    };
  }

  private String product() {
    return judgement
        .lot()
        .product()
        .map(product -> product.name())
        .orElse(phrases.say("record.batch.no-product", "no product"));
  }

  private void cure(List<Block> blocks) {
    blocks.add(new Block.Heading(2, phrases.say(section(Step.CURE))));
    blocks.addAll(new CureSum(day, judgement).blocks());
    new HoldChart(day, judgement).block().ifPresent(blocks::add);
    blocks.add(
        table(
            Sheet.CURE,
            phrases.say("record.batch.entries-of-cure", "Entries of receipt, cure and turning")));
    places.of(Step.CURE).ifPresent(blocks::add);
  }

  private Block table(Sheet sheet, String caption) {
    Optional<Block> table = entries.of(sheet, caption);
    return table.orElseGet(() -> phrases.nothingOf(caption));
  }

  private void step(List<Block> blocks, Step step) {
    boolean planned = judgement.lot().product().map(p -> p.steps().contains(step)).orElse(true);
    if (planned) {
      blocks.add(new Block.Heading(2, phrases.say(section(step))));
      blocks.add(
          Sheet.parse(step.word()).map(sheet -> table(sheet, entriesOf(step))).orElseThrow());
      places.of(step).ifPresent(blocks::add);
    }
  }

  private String entriesOf(Step step) {
    return phrases.say(
        "record.batch.entries-of-step", "Entries of the step {0}", phrases.step(step));
  }

  private void heat(List<Block> blocks) {
    blocks.add(new Block.Heading(2, phrases.say(section(Step.SMOKE))));
    blocks.addAll(new CoreChart(day, judgement).blocks());
    blocks.addAll(new CoreSection(day, judgement).blocks());
    blocks.add(table(Sheet.SMOKE, entriesOf(Step.SMOKE)));
    places.of(Step.SMOKE).ifPresent(blocks::add);
    blocks.add(table(Sheet.CHILL, entriesOf(Step.CHILL)));
    places.of(Step.CHILL).ifPresent(blocks::add);
  }

  private void end(List<Block> blocks) {
    Sections sections = new Sections(day, judgement);
    blocks.add(phrases.heading("record.batch.warm", "Time in the warm"));
    blocks.addAll(new WarmSection(judgement.lot(), phrases).blocks());
    blocks.add(phrases.heading("record.batch.weights", "Weights and mass balance"));
    blocks.addAll(new WeightSection(judgement.lot(), phrases).blocks());
    blocks.add(phrases.heading("record.batch.deviations", "Deviations and remarks"));
    blocks.addAll(new DeviationSection(day, judgement).brief());
    blocks.add(new Block.Heading(2, phrases.say(section(Step.RELEASE))));
    blocks.add(
        table(
            Sheet.DISPATCH,
            phrases.say("record.batch.entries-of-dispatch", "Entries of packing and dispatch")));
    entries
        .of(Sheet.LAB, phrases.say("record.batch.laboratory", "Laboratory results"))
        .ifPresent(blocks::add);
    blocks.add(phrases.heading("record.batch.probes", "Probes and instruments"));
    blocks.add(sections.probes());
    blocks.add(new InstrumentTable(day, judgement.lot()).block());
    new LeftOut(day, judgement.lot()).block().ifPresent(blocks::add);
    blocks.add(phrases.heading("record.batch.doubts", "Data in doubt"));
    blocks.add(sections.doubts());
    new ExplanationTable(day, judgement).block().ifPresent(blocks::add);
    blocks.add(phrases.heading("record.batch.monitoring", "Limits, monitoring and planned action"));
    new PlanVersions(day, judgement.lot()).block().ifPresent(blocks::add);
    blocks.add(sections.monitoring());
    blocks.addAll(sections.notRead());
    blocks.addAll(new Carried(day, carried).blocks());
  }
}
