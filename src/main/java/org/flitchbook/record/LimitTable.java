package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Rank;
import org.flitchbook.plan.Standing;

/**
 * Every limit beside its worst value, with the margin as a number and on a scale; the sources are
 * numbered and stand below the table.
 */
final class LimitTable {

  private final DayJudged day;
  private final List<Finding> findings;
  private final Phrases phrases;
  private final List<String> sources = new ArrayList<>();

  LimitTable(DayJudged day, Judgement judgement) {
    this.day = day;
    this.findings = Checks.inOrder(judgement.findings());
    this.phrases = day.phrases();
  }

  /**
   * The table and its small print.
   *
   * @param more what else belongs into the small print; may be empty
   */
  List<Block> blocks(String more) {
    if (findings.isEmpty()) {
      return List.of();
    }
    Grid grid =
        phrases
            .grid("record.page-one.limits", "Limits in force, each beside its worst value")
            .head("record.page-one.ccp", "CCP", 0)
            .head("record.head.limit", "Limit", 30)
            .number("record.worst-value", "Worst value", 0)
            .number("record.head.limit-value", "Limit value", 0)
            .number("record.page-one.margin", "Margin", 0)
            .head("record.page-one.scale", "inside │ over", 0)
            .head("record.head.verdict", "Verdict", 0);
    findings.forEach(finding -> grid.row(row(grid, finding)));
    return List.of(
        grid.table(), new Block.Note(phrases.bound().of((sources() + " " + more).strip())));
  }

  private Table.Cell[] row(Grid grid, Finding finding) {
    String ccp = finding.limit().monitoring().ccp();
    return new Table.Cell[] {
      grid.cell(ccp.isEmpty() ? "–" : ccp),
      new Table.Cell(name(finding.limit()), Tone.PLAIN),
      grid.cell(Phrases.worst(finding)),
      grid.cell(finding.measured().map(Phrases::sign).orElse("–")),
      grid.cell(Phrases.margin(finding)),
      new Margin(finding, phrases).cell(),
      phrases.cell(finding.verdict())
    };
  }

  /** The limit, which leads to its step, with the number of its source. */
  private Text name(Limit limit) {
    String name = limit.rank() == Rank.CRITICAL ? phrases.name(limit) : phrases.ranked(limit);
    String number = "\u00a0[" + number(source(limit)) + "]";
    Text.Target step = new Text.Target.Section(phrases.say(BatchRecord.section(limit.step())));
    return Text.of(
        new Text.Span(phrases.bound().bound(name), Text.Style.PLAIN, Optional.of(step)),
        new Text.Span(number, Text.Style.MUTED));
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
        + (plain ? "" : " (" + phrases.word("standing", standing.word()) + ")");
  }

  private String sources() {
    List<String> numbered =
        IntStream.range(0, sources.size())
            .mapToObj(i -> "[" + (i + 1) + "]\u00a0" + sources.get(i))
            .toList();
    return phrases.say("record.page-one.sources", "Sources: {0}.", String.join("; ", numbered));
  }
}
