package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.account.LotAccount.PackedBalance;
import org.flitchbook.account.LotAccount.RindOff;
import org.flitchbook.account.TimeAbove;
import org.flitchbook.account.TimeAbove.Band;
import org.flitchbook.account.TimeAbove.Inside;
import org.flitchbook.account.TimeAbove.Watched;
import org.flitchbook.check.CureLine;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Sum;
import org.flitchbook.document.Text;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/** What is added up about a lot: the cure, the time in the warm, yields, mass balance. */
final class TotalsSection extends LotSection {

  private final TimeAbove time;

  TotalsSection(DayJudged day, Judgement judgement) {
    super(day, judgement);
    this.time = account.timeAbove();
  }

  /** How long the lot was in the warm in all. */
  List<Block> warm() {
    Blocks blocks = new Blocks();
    if (!time.bands().isEmpty()) {
      blocks.add(time.watched().isEmpty() ? List.of(nothingOf(WARM)) : times());
    }
    if (!time.missing().isEmpty()) {
      blocks.add(
          paragraph(
              "record.warm.without",
              "The product has no limit of {0} that gives a temperature, so no time is added up"
                  + " against one.",
              Listing.or(time.missing().stream().map(it -> new Word("covers", it)).toList())));
    }
    return blocks.list();
  }

  private List<Block> times() {
    String unseen =
        say(
            "record.warm.unseen-told",
            "Unseen is the time between readings too far apart to tell, the one before and the one"
                + " behind it outside; it is in no column.");
    return List.of(table(), new Block.Paragraph(text(unseen, Text.Style.MUTED)));
  }

  /** A probe through a step, the time between steps, or the total; no times if none is known. */
  private record Row(
      String step, String what, String probe, List<String> times, List<String> remarks) {}

  private Block table() {
    TableBuilder<Row> table =
        table("record.warm.caption", "Time in the warm, worst case", rows())
            .column(STEP, 6, Row::step)
            .column(WHAT, 8, Row::what)
            .column(PROBE, 5, Row::probe);
    for (int i = 0; i < time.bands().size(); i++) {
      int band = i;
      Message head = Message.of(capital(name(time.bands().get(band))));
      table.number(head, 7, row -> row.times().isEmpty() ? "–" : row.times().get(band));
    }
    return table.column(REMARK, 18, row -> String.join("; ", row.remarks())).table();
  }

  private List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    time.watched().forEach(each -> rows.addAll(rows(each)));
    rows.add(
        new Row(
            say("record.warm.between-steps", "between steps"),
            say("record.warm.nobody", "nobody watched"),
            "–",
            time.bands().stream().map(band -> quantity(time.betweenSteps())).toList(),
            List.of(say("record.warm.counted", "counted as warm"))));
    Stream<String> lacking =
        time.watched().stream()
            .filter(each -> each.counts() && each.probes().isEmpty())
            .map(each -> say("record.warm.without-step", "without {0}, NOT RECORDED", step(each)));
    rows.add(
        new Row(
            say("record.warm.total", "total"),
            say("record.warm.all-steps", "all steps"),
            say("record.warm.worst", "the worst"),
            shown(time.total()),
            Stream.concat(lacking, open(time.total())).toList()));
    return rows;
  }

  private List<Row> rows(Watched watched) {
    String step = step(watched);
    String what = say(watched.what());
    List<String> apart =
        watched.counts() ? List.of() : List.of(say("record.warm.not-in-total", "not in the total"));
    List<Row> rows = new ArrayList<>();
    for (TimeAbove.Probe probe : watched.probes()) {
      List<String> remarks = Stream.concat(apart.stream(), open(probe.times())).toList();
      rows.add(new Row(step, what, probe(probe.probe()), shown(probe.times()), remarks));
    }
    if (rows.isEmpty()) {
      rows.add(new Row(step, what, notRecorded(), List.of(), apart));
    }
    return rows;
  }

  private String step(Watched watched) {
    return watched.steps().size() == 1
        ? say(watched.steps().get(0))
        : say("record.warm.heat", "smoke and chill");
  }

  /** With the figures as the limit prints them. */
  private String name(Band band) {
    return band.to()
        .map(top -> range(band.from(), top))
        .orElseGet(() -> say("record.warm.above", "above {0}", band.from()));
  }

  private static List<String> shown(List<Inside> times) {
    return times.stream().map(each -> quantity(each.longest())).toList();
  }

  /** What the readings leave open, said once where it is alike for every band. */
  private Stream<String> open(List<Inside> times) {
    List<String> each = times.stream().map(this::open).toList();
    return each.stream().distinct().count() == 1
        ? each.stream().distinct().filter(open -> !open.isEmpty())
        : IntStream.range(0, each.size())
            .filter(i -> !each.get(i).isEmpty())
            .mapToObj(i -> name(time.bands().get(i)) + ": " + each.get(i));
  }

  /** The time that it may add is in no column. */
  private String open(Inside time) {
    boolean unseen = time.unseen().value().signum() > 0;
    return joined(
        ", ",
        time.beginsInside() ? say("record.warm.begins-inside", "begins inside") : "",
        time.stillInside() ? say("record.warm.still-inside", "still inside") : "",
        unseen ? say("record.warm.unseen", "unseen {0}", quantity(time.unseen())) : "");
  }

  /** The weights step by step, the rind taken off, and what became of the last of the weights. */
  List<Block> masses() {
    return new Blocks()
        .add(weights())
        .add(account.rind().stream().map(rind -> paragraph(rindOff(rind))).toList())
        .add(balance().map(this::paragraph))
        .list();
  }

  private Block weights() {
    Message caption = Message.say("record.weights.weights", "Weights");
    return table(caption, account.yields())
        .column("record.weights.after", "After", 10, each -> name(each.weight()))
        .number("record.weights.weight", "Weight", 8, each -> each.weight().shown())
        .number("record.weights.of-before", "Of the weight before", 8, y -> percent(y.ofBefore()))
        .number("record.weights.of-green", "Of the green weight", 8, y -> percent(y.ofGreen()))
        .where(14, each -> each.weight().place())
        .or(nothingOf(caption));
  }

  private String name(Entry entry) {
    return entry.is(What.WEIGHT) ? ofPiece(word("step", entry.sheet().word()), entry) : what(entry);
  }

  private static String percent(Optional<Quantity> share) {
    return share.map(each -> each.value().rounded(1) + " %").orElse("–");
  }

  private String rindOff(RindOff rind) {
    return say(
        "record.weights.rind-off",
        "{0}: {1} = {2} skin-free, {3} of the green weight; the sums of the cure are calculated on"
            + " it.",
        ofPiece(say("record.weights.rind-taken-off", "Rind taken off"), rind.green()),
        rind.base().formula(),
        rind.base().mass(),
        percent(Optional.of(rind.ofGreen())));
  }

  /** What was packed, cut off and thrown away, in words; empty where nothing was. */
  Optional<String> balance() {
    return account.massBalance().map(this::balance);
  }

  private String balance(PackedBalance balance) {
    return say(
        "record.weights.balance",
        "Mass balance after the {0}: {1} = {2} unexplained, {3} of the last weight.",
        word("step", balance.after().sheet().word()),
        balance.unexplained().formula(),
        balance.unexplained().value(),
        balance.unexplainedShare());
  }

  /** The sums of the cure worked line by line. */
  List<Block> cure() {
    List<Sum.Line> lines = CureLine.of(judgement).stream().flatMap(this::lines).toList();
    Stream<Block> missed =
        judgement.findings().stream()
            .filter(each -> CureLine.isOfCure(each) && each.verdict().isMissed())
            .map(each -> strong(missed(each)));
    Stream<Block> sum = lines.isEmpty() ? Stream.empty() : Stream.of(new Sum(lines));
    return Stream.concat(sum, missed).toList();
  }

  private String missed(Finding finding) {
    String name = capital(name(finding.limit()));
    String reason = say(finding.reasons());
    return say("record.sum.missed", "{0} is {1}: {2}.", name, finding.verdict(), reason);
  }

  private Stream<Sum.Line> lines(CureLine line) {
    if (line instanceof CureLine.Weighed weighed) {
      return Stream.of(new Sum.Line(label(weighed.entry()), "", weighed.entry().shown()));
    }
    if (line instanceof CureLine.Provable proved) {
      String label = say("record.sum.provable", "What these scales can prove (k = 2)");
      return Stream.of(new Sum.Line(label, "", unbroken("± " + proved.half().shown())));
    }
    return summed((CureLine.Summed) line);
  }

  private String label(Entry entry) {
    String name = capital(say(entry.what()));
    return ofPiece(entry.is(What.CURING_SALT) ? ofLot(name, entry) : name, entry);
  }

  private String ofLot(String name, Entry entry) {
    return day.plan()
        .ingredient(entry.item())
        .map(it -> say("record.sum.of-ingredient", "{0}, {1} lot {2}", name, it.name(), it.lot()))
        .orElseGet(() -> say("record.sum.of-lot", "{0}, lot {1}", name, entry.item()));
  }

  private Stream<Sum.Line> summed(CureLine.Summed summed) {
    Finding finding = summed.finding();
    String verdict =
        say("record.sum.margin", "{0}, margin {1}", finding.verdict(), margin(finding));
    return Stream.of(
        new Sum.Line(
            capital(say(summed.measured().quantity())),
            unbroken(say(summed.formula())),
            unbroken(summed.measured().value().shown())),
        new Sum.Line(unbroken(capital(bound(summed.measured()))), "", unbroken(verdict)));
  }
}
