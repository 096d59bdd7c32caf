package org.flitchbook.doubt;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Ratio;
import org.flitchbook.reading.Entry;

/** Readings in tenths that nearly all end in 0 or 5 were not read off to a tenth. */
final class RoundedReadings implements Finder {

  private static final Pattern IN_TENTHS = Pattern.compile("-?\\d+[.,]\\d");
  private static final Pattern ROUND = Pattern.compile(".*[05]");

  @Override
  public String name() {
    return "rounded readings";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("readings", Dimension.NUMBER, "share", Dimension.SHARE);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    return HandReadings.of(subject.lot()).stream()
        .flatMap(readings -> rounded(rule, subject, readings).stream())
        .toList();
  }

  private static Optional<Fault> rounded(Rule rule, Subject subject, HandReadings readings) {
    List<Entry> tenths = matching(IN_TENTHS, readings.entries());
    int round = matching(ROUND, tenths).size();
    if (tenths.size() < rule.count("readings")
        || Ratio.of(round, tenths.size()).isBelow(rule.number("share").inBase())) {
      return Optional.empty();
    }
    return Optional.of(
        rule.fault(
            subject,
            tenths.get(0).place().column("value"),
            subject.say(
                "doubt.rounded.found",
                "{0} of {1} readings of {2} end in 0 or 5",
                round,
                tenths.size(),
                subject.what(readings.what())),
            subject.say("doubt.rounded.expected", "tenths as the instrument shows them")));
  }

  private static List<Entry> matching(Pattern pattern, List<Entry> entries) {
    return entries.stream().filter(entry -> pattern.matcher(entry.value()).matches()).toList();
  }
}
