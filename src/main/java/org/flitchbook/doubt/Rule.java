package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;

/**
 * One rule for dirty data, as its data file states it.
 *
 * @param numbers by their names, all that the rule asks for
 * @param lists of temperatures, by their names
 */
public record Rule(
    String name,
    Severity severity,
    Map<String, Quantity> numbers,
    Map<String, List<Quantity>> lists,
    String source) {

  public Rule {
    numbers = Map.copyOf(numbers);
    lists = Map.copyOf(lists);
  }

  /** A number that the rule's finder names among those that it needs. */
  Quantity number(String key) {
    Quantity number = numbers.get(key);
    if (number == null) {
      throw new IllegalArgumentException(name + " has no number \"" + key + "\"");
    }
    return number;
  }

  /** Temperatures as levels, see {@link Level}. */
  List<Long> levels(String key) {
    return lists.getOrDefault(key, List.of()).stream().map(Level::of).toList();
  }

  int count(String key) {
    return number(key).value().rounded(0).intValueExact();
  }

  Duration time(String key) {
    return Duration.ofSeconds(number(key).inBase().rounded(0).longValueExact());
  }

  /** A difference of temperatures, in levels. */
  long difference(String key) {
    return Level.ofDifference(number(key));
  }

  long level(String key) {
    return Level.of(number(key));
  }

  long millis(String key) {
    return time(key).toMillis();
  }

  /**
   * A finding of this rule, and what to do about it; beside a note there is nothing to be done any
   * more.
   */
  Fault fault(Subject subject, Place place, Message found, Message expected) {
    Message wanted =
        severity == Severity.NOTE
            ? expected
            : say(
                "doubt.expected",
                "{0}. {1}",
                expected,
                Message.of(subject.plan().words().word("do", name)));
    return new Fault(name, severity, subject.lot().code(), place, found, wanted);
  }

  Fault fault(Subject subject, Place place, String found, String expected) {
    return fault(subject, place, Message.of(found), Message.of(expected));
  }
}
