package org.flitchbook.record;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.archive.SkippedDays;
import org.flitchbook.change.Change;
import org.flitchbook.input.Place;
import org.flitchbook.json.Node;
import org.flitchbook.message.Language;
import org.flitchbook.message.Message;
import org.flitchbook.record.DayJudged.Filing;
import org.flitchbook.record.JsonTree.Members;

/** Where a record was filed, as its JSON states it: written, and read from a file of anybody's. */
final class FilingForm {

  static final String FILING = "filing";

  private static final Node.Obj NONE = new Node.Obj(Place.of(""), Map.of());
  private static final String HASH = "[0-9a-f]{64}";

  private FilingForm() {}

  static Members of(Filing filing, Language language) {
    Optional<Filing> amending = Optional.of(filing).filter(Filing::isAmendment);
    return new Members()
        .with("revision", filing.revision())
        .with("ledger", new Members().with("sequence", filing.line()).with("hash", filing.hash()))
        .with("amends", amending.map(Filing::amends))
        .with(
            "changes",
            amending.map(each -> each.changes().stream().map(change -> change(change, language))))
        .with("by", filing.by())
        .with("reason", filing.reason())
        .with("days", filing.days().json());
  }

  private static Members change(Change change, Language language) {
    Optional<Place> named = change.name().map(name -> Place.of(name.in(language)));
    boolean isChanged = change.type() == Change.Type.CHANGED;
    return new Members()
        .with("change", change.type().word())
        .and(JsonForm.place(named.orElse(change.place())))
        .with("lineBefore", Optional.of(change.before().line()).filter(line -> isChanged))
        .with("before", change.old().map(old -> old.in(language)).orElse(""))
        .with("now", change.text().map(text -> text.in(language)).orElse(""));
  }

  /** The filing that a record states; empty where what stands there can't be one. */
  static Optional<Filing> read(Node.Obj found) {
    if (!found.members().containsKey(FILING)) {
      return Optional.of(Filing.OUTSIDE);
    }
    Node.Obj filing = found.object(FILING).orElse(NONE);
    int revision = count(filing, "revision");
    int amends = count(filing, "amends");
    Optional<Node.Obj> ledger = filing.object("ledger");
    int line = ledger.map(end -> count(end, "sequence")).orElse(0);
    String hash = ledger.flatMap(end -> end.text("hash")).orElse("");
    return revision > 0 && amends < revision && (line == 0 || hash.matches(HASH))
        ? Optional.of(
            new Filing(
                revision,
                line,
                hash,
                amends,
                filing.text("by").orElse(""),
                filing.text("reason").orElse(""),
                filing.objects("changes").stream().map(FilingForm::change).toList(),
                days(filing)))
        : Optional.empty();
  }

  private static Change change(Node.Obj change) {
    Place now =
        Place.of(text(change, "file"), count(change, "line")).column(text(change, "column"));
    Place before = Place.of(now.file(), count(change, "lineBefore")).column(now.column());
    String type = text(change, "change");
    boolean isAdded = type.equals(Change.Type.ADDED.word());
    boolean isRemoved = type.equals(Change.Type.REMOVED.word());
    return new Change(
        Optional.empty(),
        isRemoved ? now : before,
        now,
        Optional.of(Message.of(text(change, "before"))).filter(old -> !isAdded),
        Optional.of(Message.of(text(change, "now"))).filter(text -> !isRemoved));
  }

  private static SkippedDays days(Node.Obj filing) {
    Node.Obj days = filing.object("days").orElse(NONE);
    return new SkippedDays(
        days(days, "neverClosed"), days(days, "closedLate"), days(days, "outdated"));
  }

  private static List<LocalDate> days(Node.Obj days, String key) {
    return Stream.ofNullable(days.members().get(key))
        .flatMap(list -> list instanceof Node.Items all ? all.items().stream() : Stream.of())
        .flatMap(each -> each instanceof Node.Text text ? day(text.value()) : Stream.of())
        .toList();
  }

  private static Stream<LocalDate> day(String text) {
    try {
      return Stream.of(LocalDate.parse(text));
    } catch (DateTimeException noDay) {
      return Stream.of();
    }
  }

  private static int count(Node.Obj object, String key) {
    return object.count(key).orElse(0);
  }

  private static String text(Node.Obj object, String key) {
    return object.text(key).orElse("");
  }
}
