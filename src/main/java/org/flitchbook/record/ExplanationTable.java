package org.flitchbook.record;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;

/** What people said of the doubts: of which, why, who, when, and what bears it out. */
final class ExplanationTable {

  private final Judgement judgement;
  private final Phrases phrases;

  ExplanationTable(DayJudged day, Judgement judgement) {
    this.judgement = judgement;
    this.phrases = day.phrases();
  }

  Optional<Block> block() {
    Grid grid =
        phrases
            .grid("record.explained.caption")
            .head("record.explained.doubt", 12)
            .head("record.explained.choice", 7)
            .head("record.left-out.why", 12)
            .head("record.head.by", 3)
            .head("record.head.time", 7)
            .head("record.explained.evidence", 10)
            .head("record.explained.bears-out", 11);
    for (Fault fault : judgement.faults()) {
      fault.explained().ifPresent(said -> grid.row(row(fault, said)));
    }
    return grid.isEmpty() ? Optional.empty() : Optional.of(grid.table());
  }

  private String[] row(Fault fault, Explained said) {
    String rule = phrases.word("rule", fault.rule());
    return new String[] {
      phrases.say("record.explained.of", rule, fault.place()),
      said.choice().map(this::choice).orElse("–"),
      said.why(),
      said.by(),
      time(said.place()),
      evidence(said),
      said.isBorneOut() ? phrases.say("record.explained.borne-out") : said.lacks()
    };
  }

  private String choice(Explained.Choice choice) {
    return phrases.word("choice", choice.name().toLowerCase(Locale.ROOT));
  }

  private String evidence(Explained said) {
    String named = said.evidence().stream().map(Place::toString).collect(Collectors.joining(", "));
    return phrases.orNotRecorded(named);
  }

  private String time(Place place) {
    return judgement.lot().entries().stream()
        .filter(entry -> entry.place().equals(place))
        .findFirst()
        .map(entry -> phrases.time(entry.time().written()))
        .orElseGet(phrases::notRecorded);
  }
}
