package org.flitchbook.ledger;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.flitchbook.message.Message.say;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.message.Message;

/**
 * What was done with a book's records, one line an event, never changed and only added to. Each
 * line is a JSON object in the canonical form of RFC 8785 followed by a line feed. It holds the
 * hash of the line before and its own hash: the SHA-256 of its canonical form without the member
 * {@code hash}. A line that is changed, left out or put between breaks the chain there.
 *
 * <p>The chain can't tell a ledger that was written again from one of its lines onwards; a person
 * who keeps its {@link #head} elsewhere (a printed record, a signature) can.
 *
 * @param lines those that can be read as such, in their order; never a torn last one
 * @param faults what breaks the chain, line by line; empty where it holds. A torn last line doesn't
 *     count
 * @param length the number of bytes up to the end of the last finished line
 * @param torn the last line if it has no end: a write that was cut off. It says nothing
 */
public record Ledger(List<LedgerLine> lines, List<Fault> faults, int length, Optional<Fault> torn) {

  /** The file's name in the book. */
  public static final String FILE = "ledger.jsonl";

  public Ledger {
    lines = List.copyOf(lines);
    faults = List.copyOf(faults);
  }

  /** Reads a ledger; no bytes at all are a ledger that has yet no line. */
  public static Ledger read(byte[] bytes) {
    return new Ledger(List.of(), List.of(), 0, Optional.empty()).and(bytes);
  }

  /**
   * This ledger with the bytes that follow its last finished line, which are all that is read.
   *
   * @throws IllegalStateException where the chain is broken already
   */
  public Ledger and(byte[] bytes) {
    refuseBroken();
    List<LedgerLine> all = new ArrayList<>(lines);
    List<Fault> found = new ArrayList<>();
    Optional<String> previous = Optional.of(head().hash());
    int number = lines.size();
    int start = 0;
    for (int end = next(bytes, start); end < bytes.length; end = next(bytes, start)) {
      number++;
      LineReader reader = new LineReader(number, previous);
      Optional<LedgerLine> line = reader.read(Arrays.copyOfRange(bytes, start, end));
      found.addAll(reader.faults());
      line.ifPresent(all::add);
      previous = line.map(LedgerLine::hash);
      start = end + 1;
    }
    return new Ledger(all, found, length + start, torn(number + 1, bytes.length - start));
  }

  private void refuseBroken() {
    if (!faults.isEmpty()) {
      throw new IllegalStateException("the chain is broken: " + faults.get(0));
    }
  }

  /** Where the line that begins there ends: at its line feed, or at the end of the bytes. */
  private static int next(byte[] bytes, int start) {
    int end = start;
    while (end < bytes.length && bytes[end] != '\n') {
      end++;
    }
    return end;
  }

  private static Optional<Fault> torn(int number, int bytes) {
    return bytes == 0
        ? Optional.empty()
        : Optional.of(
            fault(
                Place.of(FILE, number),
                say("ledger.torn", "{0} bytes of a line that was never finished", bytes),
                say("ledger.line-feed", "a line feed at its end")));
  }

  static Fault fault(Place place, Message found, Message expected) {
    return Fault.broken("ledger", place, found, expected);
  }

  /** The end of the chain as it was read. */
  public Head head() {
    return lines.isEmpty() ? Head.NONE : lines.get(lines.size() - 1).head();
  }

  /** The last line about one of these events on the records of that day. */
  public Optional<LedgerLine> last(LocalDate day, EventType... types) {
    return lines.stream()
        .filter(line -> line.event().isOf(day))
        .filter(line -> Arrays.stream(types).anyMatch(line.event()::is))
        .reduce((earlier, later) -> later);
  }

  /**
   * The lines that come next, to be written at {@link #length}.
   *
   * @return their bytes, each line ended by a line feed
   * @throws IllegalStateException where the chain is broken: nothing may be hung on to it
   */
  public byte[] append(List<Event> events) {
    refuseBroken();
    StringBuilder next = new StringBuilder();
    Head head = head();
    for (Event event : events) {
      LedgerLine line = LedgerLine.after(head, event);
      next.append(CanonicalJson.text(line.members())).append('\n');
      head = line.head();
    }
    return next.toString().getBytes(UTF_8);
  }
}
