package org.flitchbook.reading;

import java.text.Normalizer;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Months written as words, in whatever language that loggers are sold in: what stands for one is
 * told by its first letters, accents left out, and no two languages contradict each other.
 */
final class MonthWords {

  private static final Pattern WORD = Pattern.compile("(?U)\\p{L}{3,}\\.?");
  private static final Pattern ACCENTS = Pattern.compile("\\p{M}");

  /** English, German, Spanish, French, Italian, Portuguese and Dutch. */
  private static final Map<String, Month> BEGINNINGS = beginnings();

  private MonthWords() {}

  private static Map<String, Month> beginnings() {
    List<String> ofMonths =
        List.of(
            "jan ene gen",
            "feb fev",
            "mar mrz maa mrt",
            "apr abr avr",
            "may mai mag mei",
            "jun juin giu",
            "jul juil lug",
            "aug ago aou",
            "sep set",
            "oct okt ott out",
            "nov",
            "dec dez dic");
    Map<String, Month> beginnings = new HashMap<>();
    for (int month = 0; month < ofMonths.size(); month++) {
      for (String beginning : ofMonths.get(month).split(" ", -1)) {
        beginnings.put(beginning, Month.of(month + 1));
      }
    }
    return Map.copyOf(beginnings);
  }

  /** The text with each month in English, short or full. */
  static String inEnglish(String text, TextStyle style) {
    return WORD.matcher(text)
        .replaceAll(
            word ->
                month(word.group())
                    .map(month -> month.getDisplayName(style, Locale.ENGLISH))
                    .orElse(word.group()));
  }

  private static Optional<Month> month(String word) {
    String plain = ACCENTS.matcher(Normalizer.normalize(word, Normalizer.Form.NFD)).replaceAll("");
    String lower = plain.toLowerCase(Locale.ROOT);
    return Optional.ofNullable(BEGINNINGS.get(lower.substring(0, Math.min(4, lower.length()))))
        .or(() -> Optional.ofNullable(BEGINNINGS.get(lower.substring(0, 3))));
  }
}
