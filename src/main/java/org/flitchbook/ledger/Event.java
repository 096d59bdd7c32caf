package org.flitchbook.ledger;

import java.text.Normalizer;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What one line of the ledger says. Texts are held in Unicode's normalization form C, so that the
 * same words have the same bytes.
 *
 * @param what the word of a {@link EventType}, or of one that a later version knows
 * @param at when the line was written, to the second
 * @param tool the version of the tool that wrote the line
 * @param day the day whose records it is about; empty where it is about no day
 * @param revision of that day's records, from 1; 0 where it is about none
 * @param about the lot, the instrument or the file that it is about; empty for the whole day
 * @param by initials; empty where nobody is named
 * @param reason why, in a person's words; empty where none is asked for
 * @param inputs SHA-256 of each file that was read, by its path within the book
 * @param outputs SHA-256 of each file that was written, by its path within the book
 * @param facts what more is to be said, by a word; the word {@code hash} is refused
 */
public record Event(
    String what,
    Instant at,
    String tool,
    Optional<LocalDate> day,
    int revision,
    String about,
    String by,
    String reason,
    SortedMap<String, String> inputs,
    SortedMap<String, String> outputs,
    SortedMap<String, String> facts) {

  private static final int LAST_YEAR = 9999;

  public Event {
    at = at.truncatedTo(ChronoUnit.SECONDS);
    about = composed(about);
    by = composed(by);
    reason = composed(reason);
    inputs = composed(inputs);
    outputs = composed(outputs);
    facts = composed(facts);
    if (what.isBlank()) {
      throw new IllegalArgumentException("an event without a word");
    }
    if (revision < 0 || day.filter(date -> date.getYear() > LAST_YEAR).isPresent()) {
      throw new IllegalArgumentException("revision " + revision + " of " + day);
    }
    if (facts.containsKey("hash")) {
      throw new IllegalArgumentException("the word \"hash\" is the line's own");
    }
  }

  /** An event about which nothing more is known yet. */
  public static Event of(EventType type, Instant at, String tool) {
    SortedMap<String, String> none = Collections.emptySortedMap();
    return new Event(type.word(), at, tool, Optional.empty(), 0, "", "", "", none, none, none);
  }

  public boolean is(EventType type) {
    return what.equals(type.word());
  }

  /** Whether it is about the records of that day. */
  public boolean isOf(LocalDate date) {
    return day.filter(date::equals).isPresent();
  }

  public Event on(LocalDate date, int number) {
    return new Event(
        what, at, tool, Optional.of(date), number, about, by, reason, inputs, outputs, facts);
  }

  public Event about(String name) {
    return new Event(what, at, tool, day, revision, name, by, reason, inputs, outputs, facts);
  }

  public Event by(String initials, String why) {
    return new Event(what, at, tool, day, revision, about, initials, why, inputs, outputs, facts);
  }

  public Event files(Map<String, String> read, Map<String, String> written) {
    return new Event(
        what,
        at,
        tool,
        day,
        revision,
        about,
        by,
        reason,
        new TreeMap<>(read),
        new TreeMap<>(written),
        facts);
  }

  public Event facts(Map<String, String> more) {
    return new Event(
        what, at, tool, day, revision, about, by, reason, inputs, outputs, new TreeMap<>(more));
  }

  /** In normalization form C. */
  static String composed(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFC);
  }

  /**
   * The same texts in normalization form C, as a line holds them.
   *
   * @throws IllegalArgumentException where two keys are one key in two spellings
   */
  public static SortedMap<String, String> composed(SortedMap<String, String> texts) {
    SortedMap<String, String> composed = new TreeMap<>();
    texts.forEach(
        (key, value) -> {
          if (composed.put(composed(key), composed(value)) != null) {
            throw new IllegalArgumentException("\"" + key + "\" stands there in two spellings");
          }
        });
    return Collections.unmodifiableSortedMap(composed);
  }
}
