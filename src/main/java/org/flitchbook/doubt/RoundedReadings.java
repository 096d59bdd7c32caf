package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.reading.Entry;

/**
 * Readings in tenths that nearly all end in 0 or 5 were not read off to a tenth.
 *
 * @param readings of at least so many
 * @param share at least this share ends so
 */
@Choice("rounded readings")
record RoundedReadings(
    @Key(format = Doubts.COUNT) Integer readings, @Key(dimension = Dimension.SHARE) Quantity share)
    implements Finder {

  private static final Pattern IN_TENTHS = Pattern.compile("-?\\d+[.,]\\d");
  private static final Pattern ROUND = Pattern.compile(".*[05]");

  @Override
  public Stream<Doubt> find(Subject subject) {
    return subject.handReadings().stream()
        .map(read -> matching(IN_TENTHS, read))
        .filter(tenths -> tenths.size() >= readings)
        .filter(tenths -> !Ratio.of(round(tenths), tenths.size()).isBelow(share.inBase()))
        .map(tenths -> doubt(tenths));
  }

  private static List<Entry> matching(Pattern pattern, List<Entry> entries) {
    return entries.stream().filter(entry -> pattern.matcher(entry.value()).matches()).toList();
  }

  private static int round(List<Entry> tenths) {
    return matching(ROUND, tenths).size();
  }

  private Doubt doubt(List<Entry> tenths) {
    return new Doubt(
        tenths.get(0).place().column("value"),
        say(
            "doubt.rounded.found",
            "{0} of {1} readings of {2} end in 0 or 5",
            round(tenths),
            tenths.size(),
            tenths.get(0).what()),
        say("doubt.rounded.expected", "tenths as the instrument shows them"),
        say("do.rounded-readings", "Write the tenths that the instrument shows."));
  }
}
