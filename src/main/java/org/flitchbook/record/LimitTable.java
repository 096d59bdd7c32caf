package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.flitchbook.account.LotAccount.MarginShare;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Measured;
import org.flitchbook.document.Block;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Rank;
import org.flitchbook.plan.Standing;

/**
 * Every limit beside its worst value, with the margin as a number and on a scale; the sources are
 * numbered and stand below the table.
 */
final class LimitTable extends LotSection {

  private final List<String> sources = new ArrayList<>();

  LimitTable(DayJudged day, Judgement judgement) {
    super(day, judgement);
  }

  /**
   * The table and its small print.
   *
   * @param more what else belongs into the small print; may be empty
   */
  List<Block> blocks(String more) {
    List<Finding> findings = Checks.inOrder(judgement.findings());
    return findings.isEmpty() ? List.of() : List.of(limits(findings), smallPrint(more));
  }

  private Block limits(List<Finding> findings) {
    return table("record.page-one.limits", "Limits in force, each beside its worst value", findings)
        .column("record.page-one.ccp", "CCP", 0, f -> orDash(f.limit().monitoring().ccp()))
        .cells(LIMIT, Table.Align.LEFT, 30, f -> new Table.Cell(named(f.limit()), Tone.PLAIN))
        .number(WORST_VALUE, 0, Phrases::worst)
        .number(LIMIT_VALUE, 0, f -> f.measured().map(Phrases::sign).orElse("–"))
        .number("record.page-one.margin", "Margin", 0, Phrases::margin)
        .cells(
            Message.say("record.page-one.scale", "inside │ over"), Table.Align.LEFT, 0, this::scale)
        .verdict(0, Finding::verdict)
        .table();
  }

  /** The limit, which leads to its step, with the number of its source. */
  private Text named(Limit limit) {
    String name = limit.rank() == Rank.CRITICAL ? name(limit) : ranked(limit);
    Text.Target step = new Text.Target.Section(say(BatchRecord.title(limit.step())));
    return Text.of(
        new Text.Span(unbroken(name), Text.Style.PLAIN, Optional.of(step)),
        new Text.Span("\u00a0[" + number(source(limit)) + "]", Text.Style.MUTED));
  }

  private int number(String source) {
    if (!sources.contains(source)) {
      sources.add(source);
    }
    return sources.indexOf(source) + 1;
  }

  private String source(Limit limit) {
    Standing standing = limit.source().standing();
    boolean plain = standing == Standing.READ || standing == Standing.PLAN;
    return day.plan().cited(limit.source())
        + (plain ? "" : " (" + word("standing", standing.word()) + ")");
  }

  /** The margin as far from the tick as it is a part of the limit. */
  private Table.Cell scale(Finding finding) {
    return MarginShare.of(finding)
        .flatMap(
            margin ->
                finding
                    .measured()
                    .map(Measured::margin)
                    .map(m -> Table.Cell.of(scale(margin), words(m))))
        .orElse(new Table.Cell(Text.of("–"), Tone.PLAIN));
  }

  private static Table.Scale scale(MarginShare margin) {
    Ratio over = margin.share().inBase().negate();
    return new Table.Scale(Math.max(-1, Math.min(1, over.rounded(3).doubleValue())));
  }

  private String words(Quantity margin) {
    String size = size(margin);
    return unbroken(
        switch (margin.value().signum()) {
          case 0 -> say("record.scale.at-limit", "at the limit");
          case 1 -> say("record.scale.inside", "{0} inside the limit", size);
          default -> say("record.scale.over", "{0} over the limit", size);
        });
  }

  private Block.Note smallPrint(String more) {
    List<String> numbered =
        IntStream.range(0, sources.size())
            .mapToObj(i -> "[" + (i + 1) + "]\u00a0" + sources.get(i))
            .toList();
    String cited = say("record.page-one.sources", "Sources: {0}.", String.join("; ", numbered));
    return new Block.Note(text((cited + " " + more).strip(), Text.Style.PLAIN));
  }
}
