package org.flitchbook.record;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.document.Heading;
import org.flitchbook.document.PageBreak;
import org.flitchbook.document.Paragraph;
import org.flitchbook.reading.FileRead;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.Step;

/** The record of one lot: the first page, then step by step what was written and measured. */
final class BatchRecord {

  private final DayJudged day;
  private final Judgement judgement;
  private final Entries entries;
  private final PlaceReadings places;
  private final List<FileRead> carried;

  BatchRecord(DayJudged day, Judgement judgement, List<FileRead> carried) {
    this.day = day;
    this.judgement = judgement;
    this.carried = carried;
    ZoneId zone = day.plan().establishment().zone();
    this.places = new PlaceReadings(day, judgement.lot());
    this.entries = new Entries(judgement.lot(), zone);
  }

  Document document() {
    String lot = judgement.lot().code();
    List<Block> blocks = new ArrayList<>(new PageOne(day, judgement).blocks());
    blocks.add(new PageBreak());
    cure(blocks);
    step(blocks, Step.SOAK, "Soak");
    step(blocks, Step.DRY, "Drying");
    heat(blocks);
    end(blocks);
    return new Frame(day).document("Batch record " + lot, product(), lot, blocks);
  }

  private String product() {
    return judgement.lot().product().map(product -> product.name()).orElse("no product");
  }

  private void cure(List<Block> blocks) {
    blocks.add(new Heading(2, "Receipt and cure"));
    blocks.addAll(new CureSum(day, judgement).blocks());
    new HoldChart(day, judgement).block().ifPresent(blocks::add);
    blocks.add(table(Sheet.CURE, "Entries of receipt, cure and turning"));
    places.of(Step.CURE).ifPresent(blocks::add);
  }

  private Block table(Sheet sheet, String caption) {
    Optional<Block> table = entries.of(sheet, caption);
    return table.orElseGet(() -> new Paragraph(Bound.of(caption + ": " + Phrases.NOT_RECORDED)));
  }

  private void step(List<Block> blocks, Step step, String name) {
    boolean planned = judgement.lot().product().map(p -> p.steps().contains(step)).orElse(true);
    if (planned) {
      blocks.add(new Heading(2, name));
      blocks.add(
          Sheet.parse(step.word())
              .map(sheet -> table(sheet, "Entries of the step " + step.word()))
              .orElseThrow());
      places.of(step).ifPresent(blocks::add);
    }
  }

  private void heat(List<Block> blocks) {
    blocks.add(new Heading(2, "Smoke and chill"));
    blocks.addAll(new CoreChart(day, judgement).blocks());
    blocks.addAll(new CoreSection(day, judgement).blocks());
    blocks.add(table(Sheet.SMOKE, "Entries of the step smoke"));
    places.of(Step.SMOKE).ifPresent(blocks::add);
    blocks.add(table(Sheet.CHILL, "Entries of the step chill"));
    places.of(Step.CHILL).ifPresent(blocks::add);
  }

  private void end(List<Block> blocks) {
    Sections sections = new Sections(day, judgement);
    blocks.add(new Heading(2, "Time in the warm"));
    blocks.addAll(new WarmSection(judgement.lot()).blocks());
    blocks.add(new Heading(2, "Weights and mass balance"));
    blocks.addAll(new WeightSection(judgement.lot()).blocks());
    blocks.add(new Heading(2, "Deviations and remarks"));
    blocks.addAll(new DeviationSection(day, judgement).brief());
    blocks.add(new Heading(2, "Packing, review and distribution"));
    blocks.add(table(Sheet.DISPATCH, "Entries of packing and dispatch"));
    entries.of(Sheet.LAB, "Laboratory results").ifPresent(blocks::add);
    blocks.add(new Heading(2, "Probes and instruments"));
    blocks.add(sections.probes());
    blocks.add(sections.instruments());
    blocks.add(new Heading(2, "Data in doubt"));
    blocks.add(sections.doubts());
    blocks.add(new Heading(2, "Limits, monitoring and planned action"));
    new PlanVersions(day, judgement.lot()).block().ifPresent(blocks::add);
    blocks.add(sections.monitoring());
    blocks.addAll(sections.notRead());
    blocks.addAll(new Carried(day, carried).blocks());
  }
}
