package org.flitchbook.record;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.account.LotAccount;
import org.flitchbook.account.LotAccount.Evidence;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;

/**
 * How good the evidence is that a verdict rests on: what is in doubt, and what people said of it.
 */
final class EvidenceSection extends LotSection {

  private final Evidence evidence;

  EvidenceSection(DayJudged day, Judgement judgement) {
    super(day, judgement);
    this.evidence = account.evidence();
  }

  String sentence() {
    int entries = evidence.entries();
    return joined(
        "; ",
        count("record.evidence.entries", entries, "{0} entry by hand", "{0} entries by hand"),
        evidence.logs() == 0 ? "" : logs(),
        evidence.corrections() == 0 ? "" : corrections(),
        instruments(),
        open());
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

  private String corrections() {
    int corrections = evidence.corrections();
    return count("record.evidence.corrections", corrections, "{0} correction", "{0} corrections");
  }

  private String instruments() {
    String lapsed = String.join(", ", evidence.lapsed());
    return lapsed.isEmpty()
        ? say("record.evidence.in-force", "instruments in force")
        : say("record.evidence.lapsed", "no check in force of {0}", lapsed);
  }

  private String open() {
    LotAccount.Open open = account.open();
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
    return new Blocks()
        .add(
            table("record.doubts.caption", "Data in doubt, and what was noted", judgement.faults())
                .column("record.doubts.rule", "Rule", 8, this::rule)
                .column(FOLLOWS, 6, this::follows)
                .column(PLACE, 12, fault -> say(fault.place()))
                .column(FAULT_FOUND, 16, fault -> say(fault.found()))
                .column(EXPECTED, 14, fault -> say(fault.expected()))
                .or(
                    paragraph(
                        "record.doubts.none", "Nothing in the data of this lot was in doubt.")))
        .add(explanations())
        .list();
  }

  private String rule(Fault fault) {
    return word("rule", fault.rule());
  }

  /** What was said of a doubt. */
  private record Said(String doubt, Explained explained) {}

  /** Of which doubt, why, who, when, and what bears it out. */
  private Optional<Block> explanations() {
    List<Said> all = judgement.faults().stream().flatMap(this::said).toList();
    return table("record.explained.caption", "What was said of them", all)
        .column("record.explained.doubt", "Doubt", 12, Said::doubt)
        .column("record.explained.choice", "The readings are", 7, said -> choice(said.explained))
        .column(WHY, 12, said -> said.explained.why())
        .column(BY, 3, said -> said.explained.by())
        .column(TIME, 7, said -> time(said.explained.place()))
        .column("record.explained.evidence", "Other evidence", 10, said -> other(said.explained))
        .column("record.explained.bears-out", "Whether it bears that out", 11, this::bearsOut)
        .ifAny();
  }

  private Stream<Said> said(Fault fault) {
    String doubt = say("record.explained.of", "{0}, {1}", rule(fault), fault.place());
    return fault.explained().map(explained -> new Said(doubt, explained)).stream();
  }

  private String choice(Explained said) {
    return said.choice()
        .map(
            choice ->
                choice == Explained.Choice.CONFIRMED
                    ? say("choice.confirmed", "confirmed: they count")
                    : say("choice.excluded", "excluded: left out"))
        .orElse("–");
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

  private String bearsOut(Said said) {
    return said.explained.isBorneOut()
        ? say("record.explained.borne-out", "yes")
        : say(said.explained.lacks().orElseThrow());
  }
}
