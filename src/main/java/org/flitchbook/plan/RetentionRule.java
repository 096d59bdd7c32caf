package org.flitchbook.plan;

import java.time.Period;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.json.Fields;

/**
 * How long records are kept under some regimes.
 *
 * @param keep where the plan states nothing
 * @param least the shortest that the plan may state; empty where the regime has no number
 */
record RetentionRule(
    List<String> regimes, Period keep, Optional<Period> least, String because, Source source) {

  private static final Pattern PERIOD = Pattern.compile("([1-9]\\d?) (year|month)s?");
  private static final String EXPECTED = "a time such as 2 year or 18 month";

  static Optional<RetentionRule> read(Fields fields) {
    List<String> regimes = Lists.texts(fields, "regimes");
    Optional<Period> keep = fields.parsed("keep", EXPECTED, RetentionRule::period);
    Optional<Period> least = fields.optionalParsed("least", EXPECTED, RetentionRule::period);
    String because = fields.text("because");
    Optional<Source> source = fields.object("source").flatMap(LimitReader::source);
    return keep.flatMap(
        time -> source.map(from -> new RetentionRule(regimes, time, least, because, from)));
  }

  /** The plan's own time, where it states one that is long enough; else that of the rule. */
  Retention of(Fields head, String edition) {
    Optional<Period> own = head.optionalParsed("retention", EXPECTED, RetentionRule::period);
    own.filter(time -> least.filter(shortest -> isShorter(time, shortest)).isPresent())
        .ifPresent(time -> head.fault("retention", shown(time), atLeast()));
    return own.map(time -> new Retention(time, edition + "; " + because))
        .orElse(new Retention(keep, source.cited() + ": " + because));
  }

  private String atLeast() {
    return least.map(RetentionRule::shown).orElse("") + " or longer, " + source.cited();
  }

  private static boolean isShorter(Period one, Period other) {
    return one.toTotalMonths() < other.toTotalMonths();
  }

  private static String shown(Period period) {
    return new Retention(period, "").shown();
  }

  private static Optional<Period> period(String text) {
    Matcher period = PERIOD.matcher(text);
    if (!period.matches()) {
      return Optional.empty();
    }
    int number = Integer.parseInt(period.group(1));
    return Optional.of(
        period.group(2).equals("year") ? Period.ofYears(number) : Period.ofMonths(number));
  }
}
