package org.flitchbook.record;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.flitchbook.account.LotAccount.Evidence;
import org.flitchbook.account.LotAccount.Open;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;

/** How good the evidence of a verdict is: what is in doubt, and what people said of it. */
final class EvidenceSection extends LotSection {

  private final Evidence evidence;

  EvidenceSection(DayJudged day, Judgement judgement) {
    super(day, judgement);
    this.evidence = account.evidence();
  }

  String sentence() {
    int entries = evidence.entries();
    int corrections = evidence.corrections();
    String lapsed = String.join(", ", evidence.lapsed());
    return joined(
        "; ",
        count("record.evidence.entries", entries, "{0} entry by hand", "{0} entries by hand"),
        evidence.logs() == 0 ? "" : logs(),
        corrections == 0
            ? ""
            : count(
                "record.evidence.corrections", corrections, "{0} correction", "{0} corrections"),
        lapsed.isEmpty()
            ? say("record.evidence.in-force", "instruments in force")
            : say("record.evidence.lapsed", "no check in force of {0}", lapsed),
        open(account.open()));
  }

  private String logs() {
    String logs =
        count(
            "record.evidence.logs",
            evidence.logs(),
            "{0} log with {1} readings",
            "{0} logs with {1} readings",
            evidence.readings());
    String noGap = say("record.evidence.no-gap", "no gap");
    return logs + "; " + evidence.longestGap().map(this::gaps).orElse(noGap);
  }

  private String gaps(Quantity longest) {
    return count(
        "record.evidence.gaps",
        evidence.gaps(),
        "{0} gap, {1} min",
        "{0} gaps, the longest {1} min",
        longest.value().floor());
  }

  private String open(Open open) {
    if (open.doubts() > 0) {
      return toExplain(open.doubts());
    }
    return open.notes() == 0
        ? say("record.evidence.undoubted", "nothing in doubt")
        : count(
            "record.evidence.noted",
            open.notes(),
            "nothing open, {0} note",
            "nothing open, {0} notes");
  }

  List<Block> doubts() {
    TableBuilder<Fault> table =
        table("record.doubts.caption", "Data in doubt, and what was noted", judgement.faults())
            .column("record.doubts.rule", "Rule", 8, this::rule);
    Block none = paragraph("record.doubts.none", "Nothing in the data of this lot was in doubt.");
    return new Blocks().add(faults(table).or(none)).add(explanations()).list();
  }

  private String rule(Fault fault) {
    return word("rule", fault.rule());
  }

  /** Of which doubt, why, who, when, and what bears it out. */
  private Optional<Block> explanations() {
    List<Fault> all = judgement.faults().stream().filter(f -> f.explained().isPresent()).toList();
    return table("record.explained.caption", "What was said of them", all)
        .column("record.explained.doubt", "Doubt", 12, this::doubt)
        .column("record.explained.choice", "The readings are", 7, said(this::choice))
        .column(WHY, 12, said(Explained::why))
        .column(BY, 3, said(Explained::by))
        .column(TIME, 7, said(each -> time(each.place())))
        .column("record.explained.evidence", "Other evidence", 10, said(this::other))
        .column("record.explained.bears-out", "Whether it bears that out", 11, said(this::bearsOut))
        .ifAny();
  }

  private static Function<Fault, String> said(Function<Explained, String> shown) {
    return fault -> shown.apply(fault.explained().orElseThrow());
  }

  private String doubt(Fault fault) {
    return say("record.explained.of", "{0}, {1}", rule(fault), fault.place());
  }

  private String choice(Explained said) {
    if (said.choice().isEmpty()) {
      return "–";
    }
    return said.choice().get() == Explained.Choice.CONFIRMED
        ? say("choice.confirmed", "confirmed: they count")
        : say("choice.excluded", "excluded: left out");
  }

  private String time(Place place) {
    return lot.entries().stream()
        .filter(entry -> entry.place().equals(place))
        .findFirst()
        .map(this::time)
        .orElse(notRecorded());
  }

  private String other(Explained said) {
    return orNotRecorded(said.evidence().stream().map(this::say).collect(Collectors.joining(", ")));
  }

  private String bearsOut(Explained said) {
    return said.lacks().map(this::say).orElse(say("record.explained.borne-out", "yes"));
  }
}
