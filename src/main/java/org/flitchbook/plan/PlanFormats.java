package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.time.Period;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Format;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Shape;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** How the texts of plans, rule sets and classes are written. */
final class PlanFormats {

  private static final Pattern PERIOD = Pattern.compile("([1-9]\\d?) (year|month)s?");
  private static final Pattern FINGERPRINT = Pattern.compile("[0-9a-f]{64}");
  private static final Quantity WHOLE = Quantity.of(100, Unit.PERCENT);

  private static final Listing SHARES = Listing.or(Unit.of(Dimension.SHARE));

  static final Binder BINDER =
      Binder.PLAIN
          .with(
              Period.class,
              Format.of(
                  say("plan.a-period", "a time such as 2 year or 18 month"), PlanFormats::period))
          .with(CureMethod.class, CureMethod.FORMAT)
          .with(Standing.class, Format.choice(stated(), Standing::word))
          .with(
              char.class,
              Format.choice(
                  say("plan.decimal-mark", "\".\" or \",\""), List.of('.', ','), String::valueOf))
          .with(Unit.class, unitOf(Dimension.TEMPERATURE))
          .with(What.class, what(say("plan.a-sheet-word", "a word of the sheets"), what -> true))
          .with(
              "temperature",
              what(
                  say("plan.a-temperature", "a temperature of the sheets"),
                  PlanFormats::isTemperature))
          .with(
              "logged",
              what(
                  say("plan.a-level", "a temperature of the sheets, or humidity"),
                  PlanFormats::isLevel))
          .with(
              "condition",
              what(
                  say(
                      "plan.a-condition",
                      "a temperature or humidity with \"atLeast\", or steam or oven sealed with"
                          + " \"is\""),
                  PlanFormats::isLevel))
          .with("switch", Format.choice(List.of(What.STEAM, What.OVEN_SEALED), What::word))
          .with("on", Format.choice(say("json.text", "\"{0}\"", "on"), List.of("on"), on -> on))
          .with("rind", words("on", "off"))
          .with("column", words("by", "instrument", "value", "item", "note"))
          .with("paper", words("Letter", "A4"))
          .with("role", words("maker", "reviewer"))
          .with("review", words(Establishment.PREFERABLY_ANOTHER, Establishment.ANOTHER))
          .with("step", Format.choice(stepsInOrder(), Step.ofWork(), Step::word))
          .with(
              "support",
              text(
                  say("plan.support", "the document that supports it"),
                  document -> !document.isBlank()))
          .with(
              "address",
              text(
                  say("plan.address", "an address that begins https:// or http://"),
                  url -> url.matches("https?://\\S+")))
          .with("fingerprint", fingerprint())
          .with("height", height())
          .with(
              "difference",
              quantity(
                  say(
                      "plan.difference",
                      "a difference of 0 or more in {0}",
                      Listing.or(Unit.of(Dimension.TEMPERATURE))),
                  Dimension.TEMPERATURE,
                  width -> width.value().signum() >= 0))
          .with(
              "share of the whole",
              quantity(
                  say("plan.share-of-the-whole", "a share of at most {0} in {1}", WHOLE, SHARES),
                  Dimension.SHARE,
                  share -> !share.isAbove(WHOLE)))
          .with(
              "share of rind",
              quantity(
                  say("plan.share-of-rind", "a share below {0} in {1}", WHOLE, SHARES),
                  Dimension.SHARE,
                  share -> share.isBelow(WHOLE)));

  private PlanFormats() {}

  private static Format<String> words(String... words) {
    return Format.choice(List.of(words), word -> word);
  }

  private static List<Standing> stated() {
    return Arrays.stream(Standing.values()).filter(each -> each != Standing.PLAN).toList();
  }

  static Message stepsInOrder() {
    List<String> steps = Step.ofWork().stream().map(Step::word).toList();
    return say("plan.in-order", "{0}, in this order", Listing.commas(steps));
  }

  private static Format<Unit> unitOf(Dimension dimension) {
    List<Unit> units = Unit.of(dimension);
    return new Format<>(
        Message.of(Listing.or(units)),
        units.stream().map(Unit::symbol).toList(),
        text -> Unit.parse(text).filter(units::contains));
  }

  private static Format<What> what(Message expected, Predicate<What> fits) {
    List<String> words =
        Arrays.stream(What.values()).filter(fits).map(What::word).distinct().toList();
    return new Format<>(expected, words, text -> What.parse(text).filter(fits));
  }

  private static boolean isTemperature(What what) {
    return what.shape() == Shape.TEMPERATURE;
  }

  /** Something of which there can be a log. */
  private static boolean isLevel(What what) {
    return isTemperature(what) || what == What.HUMIDITY;
  }

  private static Format<String> text(Message expected, Predicate<String> fits) {
    return Format.of(expected, text -> Optional.of(text).filter(fits));
  }

  private static Format<Quantity> quantity(
      Message expected, Dimension dimension, Predicate<Quantity> fits) {
    return Format.of(expected, text -> Quantity.parse(text, dimension).filter(fits));
  }

  /** As programs write it, in groups of two with colons or without. */
  private static Format<String> fingerprint() {
    return Format.of(
        say("plan.fingerprint", "the SHA-256 fingerprint of a certificate: 64 hexadecimal digits"),
        text ->
            Optional.of(text.replaceAll("[: ]", "").toLowerCase(Locale.ROOT))
                .filter(digits -> FINGERPRINT.matcher(digits).matches()));
  }

  /** Above the sea, or below it. */
  private static Format<Quantity> height() {
    return Format.of(
        Format.quantity(Dimension.LENGTH).expected(),
        text -> Quantity.parse(text).filter(each -> each.dimension() == Dimension.LENGTH));
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
