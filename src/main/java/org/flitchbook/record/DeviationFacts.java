package org.flitchbook.record;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Part;
import org.flitchbook.document.Block;
import org.flitchbook.document.Facts;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Limit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/** What is known of one deviation: what happened when, how far beyond the limit, who found it. */
record DeviationFacts(Lot lot, Finding finding, Phrases phrases) {

  private static final int MOST_PLACES = 6;

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>(List.of(facts()));
    if (!finding.remarks().isEmpty()) {
      List<Facts.Fact> remark = new ArrayList<>();
      fact(
          remark,
          say("record.deviation.to-note", "To note"),
          Phrases.capital(phrases.say(finding.remarks())));
      blocks.add(new Facts(1, remark));
    }
    return blocks;
  }

  private Facts facts() {
    Limit limit = finding.limit();
    List<Facts.Fact> facts = new ArrayList<>();
    fact(facts, say("record.head.found", "What was found"), phrases.say(finding.reasons()));
    fact(facts, say("record.head.limit", "Limit"), limit(limit));
    fact(facts, say("record.worst-value", "Worst value"), value());
    fact(facts, say("record.deviation.beyond", "Beyond the limit by"), beyond());
    fact(facts, say("record.deviation.happened", "From – to"), happened());
    fact(facts, say("record.deviation.found-by", "Found by, when"), foundBy());
    fact(facts, say("record.deviation.reckoned", "Reckoned"), phrases.say(finding.formulas()));
    fact(facts, say("record.deviation.evidence", "Evidence"), evidence());
    fact(facts, say("record.head.plan-says", "The plan says"), limit.monitoring().ifMissed());
    fact(
        facts,
        say("record.deviation.ccp-and-step", "CCP and step"),
        ccp(limit) + phrases.step(limit.step()));
    return new Facts(2, facts);
  }

  private void fact(List<Facts.Fact> facts, Message label, String value) {
    facts.add(new Facts.Fact(phrases.say(label), phrases.bound().of(phrases.orNotRecorded(value))));
  }

  private String limit(Limit limit) {
    String bound = finding.measured().map(phrases::bound).orElse("–");
    return String.join(", ", bound, limit.source().cited(), limit.source().edition());
  }

  private String value() {
    return finding.measured().map(Measured::value).map(Phrases::quantity).orElse("");
  }

  /** The size of the excess. */
  private String beyond() {
    return finding
        .measured()
        .map(Measured::margin)
        .filter(margin -> margin.value().signum() < 0)
        .map(margin -> new Quantity(margin.value().abs(), margin.unit()))
        .map(Phrases::quantity)
        .orElse("–");
  }

  /** The stages that were missed, from when to when; else the readings that it rests on. */
  private String happened() {
    List<String> stages = new ArrayList<>();
    for (Part part : finding.parts()) {
      if (part.verdict().isMissed() && part.start().isPresent()) {
        String to = part.end().map(phrases::time).orElse("–");
        stages.add(phrases.say("record.band", "{0} to {1}", phrases.time(part.start().get()), to));
      }
    }
    return stages.isEmpty() ? evidenced() : String.join("; ", stages);
  }

  private String evidenced() {
    List<Instant> times = Stream.concat(written(), logged()).sorted().toList();
    if (times.isEmpty()) {
      return "";
    }
    Instant first = times.get(0);
    Instant last = times.get(times.size() - 1);
    return first.equals(last)
        ? phrases.time(first)
        : phrases.say("record.band", "{0} to {1}", phrases.time(first), phrases.time(last));
  }

  private Stream<Instant> written() {
    return lot.entries().stream()
        .filter(entry -> finding.evidence().contains(entry.place()))
        .map(entry -> entry.time().written());
  }

  private Stream<Instant> logged() {
    return lot.tracks().stream()
        .map(Lot.StepTrack::track)
        .flatMap(
            track ->
                IntStream.range(0, track.size())
                    .filter(i -> finding.evidence().contains(track.place(i)))
                    .mapToObj(i -> Instant.ofEpochMilli(track.earliest(i))));
  }

  /** Who wrote that it was found, else who was the first to hold the lot. */
  private String foundBy() {
    Optional<Entry> told = lot.first(What.FOUND).or(() -> lot.first(What.HELD));
    return told.map(entry -> entry.by() + ", " + phrases.time(entry.time().written())).orElse("");
  }

  private String evidence() {
    List<String> places =
        finding.evidence().stream().map(Place::toString).distinct().limit(MOST_PLACES).toList();
    return String.join(", ", places);
  }

  private String ccp(Limit limit) {
    String ccp = limit.monitoring().ccp();
    return ccp.isEmpty() ? "" : phrases.say("record.deviation.ccp", "CCP {0}, ", ccp);
  }
}
