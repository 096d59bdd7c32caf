package org.flitchbook.archive;

import static org.flitchbook.message.Message.say;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.message.Message;

/**
 * The files of the records as the ledger lists them, read by its events: a close lists the files of
 * a revision of its own, a signature changes one PDF from the hash that it has, and nothing else
 * lists any. A line that claims more doesn't count.
 *
 * @param files the states of each file in their order, by its path in the book; never an empty list
 * @param closes the lines of the closes that count
 * @param breaches the lines that don't
 */
public record RecordList(
    SortedMap<String, List<State>> files, List<LedgerLine> closes, List<Breach> breaches) {

  /** The fact of a line that a close added for a revision that it found. */
  public static final String FOUND = "found";

  /** The fact of a signature that names its box. */
  public static final String BOX = "box";

  /** The fact that names a key by its fingerprint. */
  public static final String KEY = "key";

  /** A file as a line lists it. */
  public record State(String hash, LedgerLine line) {}

  /**
   * A line that doesn't count.
   *
   * @param claim what it says, and why that can't be
   */
  public record Breach(long line, Message claim) {}

  public RecordList {
    files = Collections.unmodifiableSortedMap(files);
    closes = List.copyOf(closes);
    breaches = List.copyOf(breaches);
  }

  public static RecordList of(Ledger ledger) {
    Reading reading = new Reading();
    ledger.lines().forEach(reading::read);
    return new RecordList(reading.files, reading.closes, reading.breaches);
  }

  /** The file as it should be now; empty where no line lists it. */
  public Optional<State> last(String path) {
    return Optional.ofNullable(files.get(path)).map(states -> states.get(states.size() - 1));
  }

  /** The last close of a day that counts. */
  public Optional<LedgerLine> lastClose(LocalDate day) {
    return closes.stream().filter(line -> line.event().isOf(day)).reduce((earlier, later) -> later);
  }

  /**
   * The boxes of a day's records that were signed in an earlier revision and are not in the last
   * one: by the name of the record each box with the initials of the one who signed it.
   */
  public SortedMap<String, NavigableMap<String, String>> toSignAgain(LocalDate day) {
    SortedMap<String, NavigableMap<String, String>> open = new TreeMap<>();
    List<LedgerLine> ofDay = closes.stream().filter(line -> line.event().isOf(day)).toList();
    for (LedgerLine close : ofDay) {
      for (String path : close.event().outputs().keySet()) {
        boolean isLast = close.equals(ofDay.get(ofDay.size() - 1));
        NavigableMap<String, String> boxes =
            open.computeIfAbsent(
                path.substring(path.lastIndexOf('/') + 1), name -> new TreeMap<>());
        signed(path).forEach((box, by) -> boxes.compute(box, (key, old) -> isLast ? null : by));
      }
    }
    open.values().removeIf(Map::isEmpty);
    return open;
  }

  /** The boxes of a record that were signed, each with the initials of the one who did. */
  private Map<String, String> signed(String path) {
    Map<String, String> boxes = new TreeMap<>();
    files.getOrDefault(path, List.of()).stream()
        .map(state -> state.line().event())
        .filter(event -> event.is(EventType.SIGNED))
        .forEach(event -> boxes.put(event.facts().getOrDefault(BOX, ""), event.by()));
    return boxes;
  }

  /** What the lines up to one have listed. */
  private static final class Reading {

    private final SortedMap<String, List<State>> files = new TreeMap<>();
    private final List<LedgerLine> closes = new ArrayList<>();
    private final List<Breach> breaches = new ArrayList<>();
    private final Map<LocalDate, Integer> revisions = new HashMap<>();

    void read(LedgerLine line) {
      Event event = line.event();
      Optional<Message> refusal =
          event.is(EventType.CLOSED) || event.is(EventType.AMENDED)
              ? refusedClose(event)
              : event.is(EventType.SIGNED) ? refusedSignature(event) : refusedOther(event);
      if (refusal.isPresent()) {
        breaches.add(new Breach(line.sequence(), refusal.get()));
        return;
      }
      event.outputs().forEach((path, hash) -> list(path, new State(hash, line)));
      if (!event.is(EventType.SIGNED) && !event.outputs().isEmpty()) {
        closes.add(line);
        revisions.put(event.day().orElseThrow(), event.revision());
      }
    }

    private void list(String path, State state) {
      files.computeIfAbsent(path, first -> new ArrayList<>()).add(state);
    }

    private int revision(Event event) {
      return event.day().map(day -> revisions.getOrDefault(day, 0)).orElse(0);
    }

    private Optional<Message> refusedClose(Event event) {
      int last = revision(event);
      boolean isNext =
          event.facts().containsKey(FOUND) ? event.revision() > last : event.revision() == last + 1;
      if (event.day().isEmpty() || !isNext || event.is(EventType.CLOSED) != (last == 0)) {
        return Optional.of(
            say(
                "archive.list.revision",
                "it says \"{0}\" of r{1}, where the last revision of that day is r{2}",
                event.what(),
                event.revision(),
                last));
      }
      return event.outputs().isEmpty()
          ? Optional.of(say("archive.list.none", "it says \"{0}\" and lists no file", event.what()))
          : stranger(event);
    }

    /** A file that does not lie in the revision's own folder. */
    private static Optional<Message> stranger(Event event) {
      String folder = RecordFolder.path(event.day().orElseThrow(), event.revision()) + "/";
      return event.outputs().keySet().stream()
          .filter(path -> !path.startsWith(folder) || isDeeper(path.substring(folder.length())))
          .findFirst()
          .map(
              path ->
                  say(
                      "archive.list.elsewhere",
                      "it lists {0}, which does not lie in {1}",
                      path,
                      folder));
    }

    private static boolean isDeeper(String name) {
      return name.isEmpty() || name.indexOf('/') >= 0 || name.indexOf('\\') >= 0;
    }

    private Optional<Message> refusedSignature(Event event) {
      String path = event.outputs().keySet().stream().findFirst().orElse("");
      Optional<String> before =
          Optional.ofNullable(files.get(path)).map(states -> states.get(states.size() - 1).hash());
      boolean isOne =
          event.outputs().size() == 1
              && event.inputs().size() == 1
              && before.equals(Optional.ofNullable(event.inputs().get(path)));
      if (before.isEmpty() || !isOne || !path.endsWith(".pdf")) {
        return Optional.of(
            say(
                "archive.list.signature",
                "it says that a signature changed {0}, which is not one PDF with the hash that the"
                    + " ledger listed before",
                String.join(", ", event.outputs().keySet())));
      }
      if (event.revision() != revision(event) || stranger(event).isPresent()) {
        return Optional.of(
            say(
                "archive.list.superseded",
                "it says that {0} was signed, which is not of that day's last revision, r{1}",
                path,
                revision(event)));
      }
      return event.facts().containsKey(BOX) && event.facts().containsKey(KEY)
          ? Optional.empty()
          : Optional.of(
              say(
                  "archive.list.no-key",
                  "it says that {0} was signed, and not in which box and with which key",
                  path));
    }

    private static Optional<Message> refusedOther(Event event) {
      return event.outputs().isEmpty()
          ? Optional.empty()
          : Optional.of(
              say(
                  "archive.list.other",
                  "it says \"{0}\" and that this changed {1}; only a close or a signature changes"
                      + " a record",
                  event.what(),
                  String.join(", ", event.outputs().keySet())));
    }
  }
}
