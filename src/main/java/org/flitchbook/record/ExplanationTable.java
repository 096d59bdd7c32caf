package org.flitchbook.record;

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
            .grid("record.explained.caption", "What was said of them")
            .head("record.explained.doubt", "Doubt", 12)
            .head("record.explained.choice", "The readings are", 7)
            .head("record.left-out.why", "Why", 12)
            .head("record.head.by", "By", 3)
            .head("record.head.time", "Time", 7)
            .head("record.explained.evidence", "Other evidence", 10)
            .head("record.explained.bears-out", "Whether it bears that out", 11);
    for (Fault fault : judgement.faults()) {
      fault.explained().ifPresent(said -> grid.row(row(fault, said)));
    }
    return grid.isEmpty() ? Optional.empty() : Optional.of(grid.table());
  }

  private String[] row(Fault fault, Explained said) {
    String rule = phrases.word("rule", fault.rule());
    return new String[] {
      phrases.say("record.explained.of", "{0}, {1}", rule, fault.place()),
      said.choice().map(this::choice).orElse("–"),
      said.why(),
      said.by(),
      time(said.place()),
      evidence(said),
      said.isBorneOut() ? phrases.say("record.explained.borne-out", "yes") : said.lacks()
    };
  }

  private String choice(Explained.Choice choice) {
    return switch (choice) {
      case CONFIRMED -> phrases.say("choice.confirmed", "confirmed: they count");
      case EXCLUDED -> phrases.say("choice.excluded", "excluded: left out");
    };
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
