package org.flitchbook.closing;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.archive.DayLedger;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.check.Judgement;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.lot.Register;
import org.flitchbook.reading.Entry;
import org.flitchbook.record.DayJudged;
import org.flitchbook.sheet.What;

/**
 * What a close finds in the sheets that the ledger doesn't have yet.
 *
 * @param ledger held until the close is done
 */
record NewEvents(DayJudged day, int revision, LedgerFile ledger) {

  /** Releases, dispatches and failed checks, in this order. */
  List<Event> find() {
    List<Event> events = new ArrayList<>();
    day.judgements().forEach(each -> release(each).ifPresent(events::add));
    Stream.concat(
            day.judgements().stream().flatMap(this::dispatches),
            day.register().checks().stream().filter(check -> !check.passed()).map(this::failed))
        .filter(this::isNew)
        .forEach(events::add);
    return events;
  }

  private boolean isNew(Event event) {
    return ledger.ledger().lines().stream()
        .map(LedgerLine::event)
        .noneMatch(
            known ->
                known.what().equals(event.what())
                    && known.about().equals(event.about())
                    && known.facts().equals(event.facts()));
  }

  private Event event(EventType type, String about, Map<String, String> facts) {
    return ledger.event(type).on(day.day(), revision).about(about).facts(facts);
  }

  /** A day judged again as of an earlier moment says nothing new about a lot's release. */
  private Optional<Event> release(Judgement judgement) {
    Optional<Event> last = lastRelease(judgement.lot().code());
    boolean isReleased = last.filter(event -> event.is(EventType.RELEASED)).isPresent();
    Optional<Entry> review = judgement.lot().last(What.REVIEWED).filter(r -> judgement.isFree());
    if (isReleased == review.isPresent() || last.filter(this::isLater).isPresent()) {
      return Optional.empty();
    }
    return Optional.of(
        review.map(entry -> released(judgement, entry)).orElseGet(() -> withdrawn(judgement)));
  }

  private Optional<Event> lastRelease(String lot) {
    return ledger.ledger().lines().stream()
        .map(LedgerLine::event)
        .filter(event -> event.is(EventType.RELEASED) || event.is(EventType.RELEASE_WITHDRAWN))
        .filter(event -> event.about().equals(lot))
        .reduce((earlier, later) -> later);
  }

  private boolean isLater(Event event) {
    return DayLedger.judgedAt(event).filter(moment -> moment.isAfter(day.moment())).isPresent();
  }

  private Event released(Judgement judgement, Entry review) {
    return event(
        EventType.RELEASED,
        judgement.lot().code(),
        Map.of(
            "reviewed by",
            review.by(),
            "reviewed at",
            time(review),
            DayLedger.JUDGED_AT,
            day.moment().toString()));
  }

  private Event withdrawn(Judgement judgement) {
    return event(
        EventType.RELEASE_WITHDRAWN,
        judgement.lot().code(),
        Map.of(
            "verdict", judgement.verdict().words(), DayLedger.JUDGED_AT, day.moment().toString()));
  }

  private Stream<Event> dispatches(Judgement judgement) {
    return judgement.lot().all(What.DISPATCHED).stream()
        .map(
            entry ->
                event(
                    EventType.DISPATCHED,
                    judgement.lot().code(),
                    Map.of(
                        "customer", entry.item(),
                        "quantity", entry.shown(),
                        "time", time(entry),
                        "by", entry.by())));
  }

  private Event failed(Register.Check check) {
    return event(
        EventType.INSTRUMENT_FAILED,
        check.instrument().id(),
        Map.of(
            "check", check.entry().what().word(),
            "read", check.entry().shown(),
            "error", check.error().shown(),
            "time", time(check.entry()),
            "by", check.entry().by()));
  }

  private String time(Entry entry) {
    ZoneId zone = day.plan().establishment().zone();
    return entry.time().written().atZone(zone).toOffsetDateTime().toString();
  }
}
