package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.message.Language;
import org.flitchbook.reading.Entry;

/**
 * An {@code explained} entry, read. Its item is a fault's rule and place as printed; its value says
 * {@code confirmed} or {@code excluded} where it is about readings, and then the {@code file:line}
 * of each reading or check that bears it out. A file of the same day needs no folder.
 *
 * @param unread the first word of the value that is neither; empty where there is none
 */
record ExplainedEntry(
    Entry entry, Optional<Explained.Choice> choice, List<Place> evidence, Optional<String> unread) {

  private static final Pattern PLACE = Pattern.compile("([^:]+\\.csv):([1-9]\\d{0,8})(?::(.+))?");

  /**
   * A correction of an explanation whose value is this says that it holds no longer, and puts no
   * other in its place.
   */
  private static final String WITHDRAWN = "withdrawn";

  static boolean isWithdrawal(Entry entry) {
    return !entry.corrects().isEmpty() && entry.value().strip().equalsIgnoreCase(WITHDRAWN);
  }

  static ExplainedEntry of(Entry entry) {
    Optional<Explained.Choice> choice = Optional.empty();
    List<Place> evidence = new ArrayList<>();
    for (String word : entry.value().strip().split("[\\s,;]+", -1)) {
      Optional<Explained.Choice> chosen = choice(word);
      Optional<Place> place = place(word, folder(entry));
      if (!word.isEmpty() && place.isEmpty() && (chosen.isEmpty() || choice.isPresent())) {
        return new ExplainedEntry(entry, choice, evidence, Optional.of(word));
      }
      choice = choice.or(() -> chosen);
      place.ifPresent(evidence::add);
    }
    return new ExplainedEntry(entry, choice, evidence, Optional.empty());
  }

  private static Optional<Explained.Choice> choice(String word) {
    return Arrays.stream(Explained.Choice.values())
        .filter(each -> each.name().equals(word.toUpperCase(Locale.ROOT)))
        .findFirst();
  }

  private static Optional<Place> place(String word, String folder) {
    Matcher found = PLACE.matcher(word);
    if (!found.matches()) {
      return Optional.empty();
    }
    String file = found.group(1).contains("/") ? found.group(1) : folder + found.group(1);
    String column = Optional.ofNullable(found.group(3)).orElse("");
    return Optional.of(new Place(file, Integer.parseInt(found.group(2)), column));
  }

  private static String folder(Entry entry) {
    String file = entry.place().file();
    return file.substring(0, file.lastIndexOf('/') + 1);
  }

  /**
   * Whether it names a fault: with its column or without, with its folder or in the same one; a
   * note by its rule alone. The rule may stand as the record prints it.
   */
  boolean isOf(Fault fault, Language language) {
    List<String> rules = List.of(fault.rule(), language.word("rule", fault.rule()));
    String written = entry.item().strip();
    Place place = fault.place();
    if (fault.is(Severity.NOTE) && rules.contains(written)) {
      return true;
    }
    return Stream.of(place, Place.of(place.file(), place.line()))
        .map(Place::toString)
        .flatMap(at -> Stream.of(at, at.replaceFirst("^" + Pattern.quote(folder(entry)), "")))
        .anyMatch(at -> rules.stream().anyMatch(rule -> written.equals(rule + " " + at)));
  }

  /** The place that it names behind one of these rules; empty where it names none. */
  Optional<Place> of(Stream<String> rules) {
    String written = entry.item().strip();
    return rules
        .filter(rule -> written.startsWith(rule + " "))
        .flatMap(rule -> place(written.substring(rule.length()).strip(), folder(entry)).stream())
        .findFirst();
  }
}
