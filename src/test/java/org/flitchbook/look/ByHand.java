package org.flitchbook.look;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.Charset;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Reads a log as somebody would who was told where everything stands, with nothing of the program.
 *
 * <p>The description has, parted by semicolons: what parts the cells; the encoding where it is not
 * UTF-8; {@code mark ,} for decimal commas; {@code skip} and a number of lines; {@code time}, its
 * columns, and the order of its parts or what it counts; {@code utc} behind it where it is not five
 * hours later there; and {@code values} with the columns, by number or by word, and their units.
 *
 * <p>The parts of a time: y year, M month, N month in words, d day, D day of the year, w a weekday,
 * H hour, m minute, s second, f a fraction, a half of the day, z an offset; a digit behind one says
 * how many digits it has.
 */
record ByHand(Map<String, String> told, String text) {

  private static final ZoneOffset CLOCK = ZoneOffset.ofHours(-5);
  private static final Instant START = Instant.parse("2026-02-24T13:02:00Z");
  private static final String MONTHS = "janfebmaraprmayjunjulaugsepoctnovdec";
  private static final Map<String, Character> DELIMITERS =
      Map.of("comma", ',', "semicolon", ';', "tab", '\t');
  private static final Pattern VALUE =
      Pattern.compile("([-+]?\\d+(?:\\.\\d+)?(?:[eE][-+]?\\d+)?) ?°?([FC]?)");

  /** What a converter of two or four bytes says where nothing is connected. */
  private static final String NOTHING = "2147483647";

  private static final Pattern PART = Pattern.compile("([a-zA-Z])(\\d?)");

  static ByHand of(Shape shape) {
    Map<String, String> told = new LinkedHashMap<>();
    for (String item : shape.byHand().split("; ", -1)) {
      String[] words = item.split(" ", 2);
      told.put(words[0], words.length > 1 ? words[1] : "");
    }
    String charset =
        told.keySet().stream().filter(Charset::isSupported).findFirst().orElse("utf-8");
    String text = new String(shape.bytes(), Charset.forName(charset));
    return new ByHand(told, text.replace("\uFEFF", ""));
  }

  /** A value column: where it stands, and its unit. */
  record Column(String called, String unit) {}

  List<Column> columns() {
    return Arrays.stream(told.getOrDefault("values", "").split(", (?=\\S+( \\(\\S+\\))? [°%])"))
        .map(item -> new Column(item.replaceFirst(" \\S+$", ""), item.replaceFirst("^.* ", "")))
        .toList();
  }

  /** All that the log says. */
  String figures() {
    return figures(Integer.MAX_VALUE);
  }

  /**
   * The same as rows, first and last time, and values.
   *
   * @param digits behind the decimal mark to which the values are rounded
   */
  String figures(int digits) {
    Map<Column, List<BigDecimal>> values = new LinkedHashMap<>();
    TreeSet<Instant> times = new TreeSet<>();
    int rows = 0;
    List<String> heading = List.of();
    List<String> lines = text.lines().toList();
    for (int line = 0; line < lines.size(); line++) {
      List<String> cells = cells(lines.get(line));
      heading = columns().stream().anyMatch(c -> cells.contains(c.called())) ? cells : heading;
      Optional<Instant> time =
          line < Integer.parseInt(told.getOrDefault("skip", "0")) ? Optional.empty() : time(cells);
      Map<Column, BigDecimal> read = time.isPresent() ? values(cells, heading) : Map.of();
      if (!read.isEmpty()) {
        rows++;
        times.add(time.orElseThrow());
        read.forEach((c, v) -> values.computeIfAbsent(c, first -> new ArrayList<>()).add(v));
      }
    }
    return "%d | %s | %s | %s"
        .formatted(
            rows,
            times.first(),
            times.last(),
            columns().stream()
                .map(c -> range(values.get(c), digits))
                .collect(Collectors.joining("; ")));
  }

  /** What stands on a line, in that cell from 1. */
  String word(int line, int number) {
    return cell(cells(text.lines().toList().get(line - 1)), number);
  }

  static String range(List<BigDecimal> values, int digits) {
    TreeSet<BigDecimal> sorted = new TreeSet<>();
    values.forEach(
        value -> sorted.add(value.setScale(Math.min(value.scale(), digits), RoundingMode.HALF_UP)));
    return plain(sorted.first()) + " to " + plain(sorted.last()) + " in " + values.size();
  }

  private static String plain(BigDecimal value) {
    return value.stripTrailingZeros().toPlainString();
  }

  private List<String> cells(String line) {
    char delimiter =
        told.keySet().stream()
            .filter(DELIMITERS::containsKey)
            .map(DELIMITERS::get)
            .findFirst()
            .orElseThrow();
    List<String> cells = new ArrayList<>(List.of(""));
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char letter = line.charAt(i);
      quoted ^= letter == '"';
      if (letter == delimiter && !quoted) {
        cells.add("");
      } else if (letter != '"') {
        cells.set(cells.size() - 1, cells.get(cells.size() - 1) + letter);
      }
    }
    return cells.stream().map(String::strip).toList();
  }

  private static String cell(List<String> cells, int number) {
    return number <= cells.size() && number > 0 ? cells.get(number - 1) : "";
  }

  private Map<Column, BigDecimal> values(List<String> cells, List<String> heading) {
    Map<Column, BigDecimal> values = new LinkedHashMap<>();
    for (Column column : columns()) {
      boolean numbered = column.called().matches("\\d+");
      int at = numbered ? Integer.parseInt(column.called()) : heading.indexOf(column.called()) + 1;
      String text = cell(cells, at);
      Matcher value = VALUE.matcher(told.containsKey("mark") ? text.replace(',', '.') : text);
      if (value.matches() && !text.equals(NOTHING) && column.unit().endsWith(value.group(2))) {
        values.put(column, new BigDecimal(value.group(1)));
      }
    }
    return values;
  }

  private Optional<Instant> time(List<String> cells) {
    String[] how = told.get("time").split(" ", 2);
    String text =
        Arrays.stream(how[0].split("\\+"))
            .map(number -> cell(cells, Integer.parseInt(number)))
            .collect(Collectors.joining(" "));
    if (!text.matches(".*\\d.*")) {
      return Optional.empty();
    }
    return Optional.of(
        switch (how[1]) {
          case "unix" -> Instant.ofEpochMilli(millis(text, 1000));
          case "unix milliseconds" -> Instant.ofEpochMilli(Long.parseLong(text));
          case "milliseconds" -> START.plusMillis(Long.parseLong(text));
          case "seconds" -> START.plusMillis(millis(text, 1000));
          case "days" ->
              LocalDate.of(1899, 12, 30)
                  .atStartOfDay()
                  .toInstant(CLOCK)
                  .plusMillis(millis(text, 86_400_000));
          case "run" -> START.plusSeconds(run(text.split(":")));
          default -> written(text, how[1]);
        });
  }

  private static long millis(String text, long ofOne) {
    return Math.round(new BigDecimal(text).multiply(BigDecimal.valueOf(ofOne)).doubleValue());
  }

  private static long run(String[] parts) {
    return Arrays.stream(parts)
        .mapToLong(Long::parseLong)
        .reduce(0, (all, part) -> all * 60 + part);
  }

  private static Instant written(String text, String order) {
    Map<Character, String> parts = new LinkedHashMap<>();
    Matcher part = PART.matcher(order.replace(" utc", ""));
    int at = 0;
    while (part.find()) {
      char kind = part.group(1).charAt(0);
      Matcher found = Pattern.compile(form(kind, part.group(2))).matcher(text);
      if (found.find(at)) {
        parts.put(kind, found.group(1));
        at = found.end();
      }
    }
    ZoneOffset offset =
        parts.containsKey('z')
            ? ZoneOffset.of(parts.get('z'))
            : order.endsWith(" utc") ? ZoneOffset.UTC : CLOCK;
    return local(parts).toInstant(offset);
  }

  private static String form(char kind, String digits) {
    return switch (kind) {
      case 'w', 'N', 'a' -> "(\\p{L}+)";
      case 'f' -> "\\G[.,](\\d+)";
      case 'z' -> "([-+]\\d\\d:?\\d\\d)$";
      default -> digits.isEmpty() ? "(\\d+)" : "(\\d{" + digits + "})";
    };
  }

  private static LocalDateTime local(Map<Character, String> parts) {
    int year = Integer.parseInt(parts.get('y'));
    int full = year < 100 ? 2000 + year : year;
    int hour = Integer.parseInt(parts.get('H'));
    String half = parts.getOrDefault('a', "");
    int ofDay = half.isEmpty() ? hour : hour % 12 + (half.equals("PM") ? 12 : 0);
    String fraction = (parts.getOrDefault('f', "") + "000000000").substring(0, 9);
    LocalDate day =
        parts.containsKey('D')
            ? LocalDate.ofYearDay(full, Integer.parseInt(parts.get('D')))
            : LocalDate.of(full, month(parts), Integer.parseInt(parts.get('d')));
    return day.atTime(
        ofDay,
        Integer.parseInt(parts.get('m')),
        Integer.parseInt(parts.getOrDefault('s', "0")),
        Integer.parseInt(fraction));
  }

  private static int month(Map<Character, String> parts) {
    return parts.containsKey('N')
        ? MONTHS.indexOf(parts.get('N').substring(0, 3).toLowerCase(Locale.ROOT)) / 3 + 1
        : Integer.parseInt(parts.get('M'));
  }
}
