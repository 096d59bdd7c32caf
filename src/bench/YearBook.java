import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Lays out a book of many days from the nine days of a book with one lot: so many lots begin on
 * each day, each with a log of so many rows on its last day. Invented data, for measuring only.
 *
 * <p>{@code java src/bench/YearBook.java FROM TO DAYS LOTS ROWS}
 */
final class YearBook {

  private static final LocalDate FIRST = LocalDate.of(2026, 2, 16);
  private static final String LOT = "26047-B1";
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);

  private final Path from;
  private final Path to;
  private final int days;
  private final int lots;
  private final int rows;

  /** The text of each file, by its path in the book. */
  private final Map<String, StringBuilder> files = new TreeMap<>();

  private YearBook(Path from, Path to, int days, int lots, int rows) {
    this.from = from;
    this.to = to;
    this.days = days;
    this.lots = lots;
    this.rows = rows;
  }

  public static void main(String[] args) throws IOException {
    int[] numbers = Stream.of(args).skip(2).mapToInt(Integer::parseInt).toArray();
    new YearBook(Path.of(args[0]), Path.of(args[1]), numbers[0], numbers[1], numbers[2]).lay();
  }

  private void lay() throws IOException {
    List<Path> sheets;
    try (Stream<Path> all = Files.walk(from)) {
      sheets = all.filter(file -> file.toString().endsWith(".csv")).sorted().toList();
    }
    for (int begin = 0; begin < days; begin++) {
      for (Path sheet : sheets) {
        add(sheet, begin);
      }
    }
    for (Map.Entry<String, StringBuilder> file : files.entrySet()) {
      Path target = to.resolve(file.getKey());
      Files.createDirectories(target.getParent());
      Files.writeString(target, file.getValue());
    }
    String plan = Files.readString(from.resolve("plan.json"));
    Files.writeString(
        to.resolve("plan.json"),
        plan.replaceAll(
            "\"reassessBy\": \"[0-9-]+\"",
            "\"reassessBy\": \"" + FIRST.plusDays(days + 30L) + "\""));
  }

  private void add(Path sheet, int begin) throws IOException {
    LocalDate written = LocalDate.parse(sheet.getParent().getFileName().toString());
    LocalDate day = written.plusDays(begin);
    String name = sheet.getFileName().toString();
    if (!day.isBefore(FIRST.plusDays(days)) || (name.equals("instruments.csv") && begin % 7 != 0)) {
      return;
    }
    List<String> lines = Files.readAllLines(sheet);
    if (name.equals("probes-a.csv")) {
      for (int lot = 1; lot <= lots; lot++) {
        files.put(day + "/probes-" + lot + ".csv", log(lines, begin, lot == 1));
      }
      files.put(day + "/logs.json", new StringBuilder(entries(day, begin)));
      return;
    }
    StringBuilder file =
        files.computeIfAbsent(day + "/" + name, key -> new StringBuilder(lines.get(0) + "\n"));
    boolean ofLots = lines.stream().anyMatch(line -> line.startsWith(LOT));
    for (int lot = 1; lot <= (ofLots ? lots : 1); lot++) {
      for (String line : lines.subList(1, lines.size())) {
        file.append(line.replace(written.toString(), day.toString()).replace(LOT, code(begin, lot)))
            .append('\n');
      }
    }
  }

  private static String code(int begin, int lot) {
    LocalDate day = FIRST.plusDays(begin);
    return String.format(Locale.ROOT, "%02d%03d-B%d", day.getYear() % 100, day.getDayOfYear(), lot);
  }

  /** The curve of the one log, read more or less often. */
  private StringBuilder log(List<String> lines, int begin, boolean withAir) {
    List<double[]> read = new ArrayList<>();
    LocalDateTime first = LocalDateTime.parse(lines.get(1).split(",")[0], TIME);
    LocalDateTime last = LocalDateTime.parse(lines.get(lines.size() - 1).split(",")[0], TIME);
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      read.add(new double[] {number(cells[1], 38), number(cells[2], 40)});
    }
    long seconds = java.time.Duration.between(first, last).toSeconds();
    StringBuilder log = new StringBuilder(withAir ? "Time,P1,Air\n" : "Time,P1\n");
    for (int i = 0; i < rows; i++) {
      double at = (double) i * (read.size() - 1) / (rows - 1);
      LocalDateTime time =
          first.plusDays(begin).plusSeconds(Math.round(i * (double) seconds / (rows - 1)));
      log.append(time.format(TIME)).append(',').append(level(read, at, 0));
      log.append(withAir ? "," + level(read, at, 1) : "").append('\n');
    }
    return log;
  }

  private static double number(String cell, double otherwise) {
    return cell.isBlank() ? otherwise : Double.parseDouble(cell);
  }

  private static String level(List<double[]> read, double at, int column) {
    int before = (int) at;
    int after = Math.min(before + 1, read.size() - 1);
    double share = at - before;
    double level = read.get(before)[column] * (1 - share) + read.get(after)[column] * share;
    return String.format(Locale.ROOT, "%.1f", level);
  }

  private String entries(LocalDate day, int begin) {
    StringBuilder entries = new StringBuilder();
    for (int lot = 1; lot <= lots; lot++) {
      String air =
          """
          , {"column": "Air", "what": "chamber temperature", "unit": "°F", "place": "SM",
                 "until": "%s 11:08:00"}\
          """
              .formatted(day);
      entries
          .append(lot == 1 ? "" : ",\n")
          .append(
              """
              {"files": "probes-%d.csv",
                "time": {"column": "Time", "pattern": "yyyy-MM-dd HH:mm:ss", "zone": "America/New_York"},
                "instrument": "LG-A",
                "columns": [
                  {"column": "P1", "what": "internal temperature", "unit": "°F", "lot": "%s", "item": "P1"}%s
                ]}\
              """
                  .formatted(lot, code(begin, lot), lot == 1 ? air : ""));
    }
    return "{\"logs\": [\n" + entries + "\n]}\n";
  }
}
