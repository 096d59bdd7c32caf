package org.flitchbook.check;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.flitchbook.doubt.Doubts;
import org.flitchbook.doubt.Rule;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.judging.Judging;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Lots;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Plans;
import org.flitchbook.practice.ToolPractice;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Hand;
import org.flitchbook.reading.Readings;
import org.jspecify.annotations.Nullable;

/**
 * A book of one day and one lot, {@code A1}, made of a few lines and judged as {@code check} judges
 * a book. The plan has one product, {@code P}, with the limits that a test asks for. A line is
 * {@code sheet,time,what,item,value,unit,by,instrument,note,corrects,piece,way,entered}; what is
 * left out at its end is filled: written by MA, weighed on S-001, measured with the exact HT-0.
 */
public final class Bench {

  static final ZoneId ZONE = ZoneId.of("America/New_York");
  static final String DAY = "2026-02-24";

  private static final String HEAD =
      "lot,time,what,item,value,unit,by,instrument,note,corrects,piece,way,entered";
  private static final List<SourceFile> TEMPLATES =
      List.of(
          freelyCovered(template("templates/classes.json")),
          ofOneDay(ToolPractice.file()),
          template("templates/limits/us.json"),
          template("templates/limits/us-retail.json"));
  private static final List<Rule> RULES =
      Doubts.rules(ofExactInstruments(template("templates/doubts.json"))).all();

  /** Those that ask whether a curve can be true; a test of sums may draw what no meat does. */
  private static final Set<String> OF_CURVES =
      Set.of(
          "unit mistaken",
          "error value",
          "impossible value",
          "probe not in the meat",
          "probe pulled and put back",
          "probe pulled at the finish",
          "probe moved",
          "core equals air",
          "core on the wrong side of its air",
          "stuck",
          "lid open",
          "fire out",
          "probes disagree",
          "hand and log disagree",
          "hand reading in the other unit",
          "hand reading leaps",
          "two levels at one time",
          "gap over a crossing",
          "log begins late",
          "log ends early",
          "clock offset",
          "clock drift",
          "time before the lot",
          "time far from its step");

  private static final Map<String, Plan> PLANS = new ConcurrentHashMap<>();

  private final Map<String, String> product = new LinkedHashMap<>();
  private final List<String> limits = new ArrayList<>();
  private final List<String> own = new ArrayList<>();
  private final Map<String, String> edits = new LinkedHashMap<>();
  private final Map<String, StringBuilder> sheets = new TreeMap<>();
  private final List<SourceFile> logs = new ArrayList<>();
  private final List<String> layouts = new ArrayList<>();
  private String temperature = "°F";
  private boolean believed;
  private boolean doubting;
  private @Nullable Set<String> only;
  private String day = DAY;

  private Bench() {
    product.put("class", "\"heat treated, not fully cooked, not shelf stable\"");
    product.put("cut", "\"belly\"");
    product.put("cureMethod", "\"dry\"");
    product.put("steps", "[\"cure\", \"soak\", \"dry\", \"smoke\", \"chill\"]");
  }

  /** A book whose instruments were all checked and found right. */
  public static Bench book() {
    Bench bench = unchecked().write("cure,2026-02-01 05:00,product,P");
    for (String instrument : List.of("HT-0", "HT-1", "LG-0", "LG-A", "LG-H")) {
      bench.write("instruments,2026-02-01 06:00,ice point,,32.0,°F,MA," + instrument);
    }
    for (String scale : List.of("S-10", "S-001")) {
      bench.write("instruments,2026-02-01 06:00,check weight,100 g,100.00,g,MA," + scale);
    }
    return bench;
  }

  /** A book without anything in it. */
  public static Bench unchecked() {
    return new Bench();
  }

  /**
   * A book whose entries nobody doubts, for numbers at the edge of a limit and of what is usual.
   */
  public Bench believed() {
    believed = true;
    return this;
  }

  /** With the rules that ask whether a curve can be true. */
  public Bench doubting() {
    doubting = true;
    return this;
  }

  /** With these rules for dirty data alone. */
  Bench only(Set<String> rules) {
    only = rules;
    return this;
  }

  /** The names of all rules for dirty data. */
  static List<String> ruleNames() {
    return RULES.stream().map(Rule::name).toList();
  }

  /** In the folder of another day, before any log is added; its times name their date. */
  Bench on(String other) {
    day = other;
    return this;
  }

  private List<Rule> rules() {
    Set<String> named = only;
    if (named != null) {
      return RULES.stream().filter(rule -> named.contains(rule.name())).toList();
    }
    return doubting
        ? RULES
        : RULES.stream().filter(rule -> !OF_CURVES.contains(rule.name())).toList();
  }

  /** A fact of the product, as JSON. */
  public Bench product(String key, String json) {
    product.put(key, json);
    return this;
  }

  public Bench temperature(String unit) {
    temperature = unit;
    return this;
  }

  /** A plan that says something else in one place. */
  Bench planned(String text, String now) {
    if (!BenchPlan.TEXT.contains(text)) {
      throw new AssertionError("the plan has no " + text);
    }
    edits.put(text, now);
    return this;
  }

  /** A limit of the rule sets, or an entry of a plan's limits as JSON. */
  public Bench rule(String idOrJson) {
    limits.add(idOrJson.startsWith("{") ? idOrJson : "{\"limit\": \"" + idOrJson + "\"}");
    return this;
  }

  /** A critical limit of the plan's own: the rest of its JSON from the kind on. */
  public Bench own(String id, String step, String numbers) {
    return own(id, step, "critical", numbers);
  }

  public Bench own(String id, String step, String rank, String numbers) {
    own.add(
        "{\"id\": \"%s\", \"covers\": \"%s\", \"step\": \"%s\", \"rank\": \"%s\", %s, \"because\": \"why\", \"support\": \"paper\"}"
            .formatted(id, id, step, rank, numbers));
    return this;
  }

  public Bench covers(String id, String covers, String step, String numbers) {
    own(id, step, numbers);
    own.add(own.remove(own.size() - 1).replace("\"covers\": \"" + id, "\"covers\": \"" + covers));
    return this;
  }

  /** Lines of sheets, the time without a date on the day itself. */
  public Bench write(String... lines) {
    return writeOf("A1", lines);
  }

  /** The same of another lot. */
  public Bench writeOf(String lot, String... lines) {
    for (String line : lines) {
      String[] cells = line.split(",", -1);
      String sheet = cells[0] + ".csv";
      sheets.computeIfAbsent(sheet, name -> new StringBuilder(HEAD + "\n")).append(row(lot, cells));
    }
    return this;
  }

  /** The same book with the rows of each sheet in another order. */
  public Bench shuffled(SplittableRandom random) {
    sheets.replaceAll((name, text) -> shuffled(text.toString().lines().toList(), random));
    return this;
  }

  private static StringBuilder shuffled(List<String> lines, SplittableRandom random) {
    List<String> left = new ArrayList<>(lines.subList(1, lines.size()));
    StringBuilder text = new StringBuilder(HEAD + "\n");
    while (!left.isEmpty()) {
      text.append(left.remove(random.nextInt(left.size()))).append('\n');
    }
    return text;
  }

  private static String row(String of, String[] cells) {
    String[] row = new String[13];
    for (int i = 0; i < row.length; i++) {
      row[i] = i < cells.length ? cells[i] : "";
    }
    String time = time(row[1]);
    String by = cells.length > 6 ? row[6] : "MA";
    String instrument = cells.length > 7 ? row[7] : instrument(row[5]);
    String lot = row[0].equals("instruments") ? "" : of;
    List<String> all =
        List.of(
            lot,
            time,
            row[2],
            row[3],
            row[4],
            row[5],
            by,
            instrument,
            row[8],
            row[9],
            row[10],
            row[11],
            row[12]);
    return String.join(",", all) + "\n";
  }

  private static String time(String written) {
    return written.length() > 8 ? written : DAY + " " + written;
  }

  private static String instrument(String unit) {
    return switch (unit) {
      case "g", "kg", "oz", "lb" -> "S-001";
      case "°F", "°C" -> "HT-0";
      default -> "";
    };
  }

  /** The core of a probe: see {@link Log} for its readings. */
  public Bench core(String probe, String instrument, String readings) {
    String lot = "\"lot\": \"A1\"";
    return log(probe, "internal temperature", "°F", instrument, lot, readings);
  }

  /**
   * Adds a log of one column.
   *
   * @param of {@code "lot": "A1"} or {@code "place": "F2"}
   */
  public Bench log(
      String name, String what, String unit, String instrument, String of, String readings) {
    Log log = Log.of(readings);
    String file = name.toLowerCase(java.util.Locale.ROOT) + "-log.csv";
    layouts.add(
        """
        {"files": "%s", "instrument": "%s",
         "time": {"column": "Time", "pattern": "%s", "zone": "America/New_York"},
         "columns": [{"column": "%s", "what": "%s", "unit": "%s", "item": "%s", %s}]}\
        """
            .formatted(file, instrument, log.pattern(), name, what, unit, name, of));
    logs.add(SourceFile.of(day + "/" + file, log.csv(name).getBytes(UTF_8)));
    return this;
  }

  /** A log as it stands, with its entry of logs.json. */
  public Bench file(String name, String csv, String layout) {
    layouts.add(layout);
    logs.add(SourceFile.of(day + "/" + name, csv.getBytes(UTF_8)));
    return this;
  }

  public Plan plan() {
    StringBuilder facts = new StringBuilder();
    product.forEach((key, json) -> facts.append("\"%s\": %s, ".formatted(key, json)));
    String planned = BenchPlan.TEXT;
    for (Map.Entry<String, String> edit : edits.entrySet()) {
      planned = planned.replace(edit.getKey(), edit.getValue());
    }
    String text =
        planned
            .replace("TEMPERATURE", temperature)
            .replace("FACTS", facts)
            .replace("OWN", String.join(",\n", own))
            .replace("LIMITS", String.join(",\n", limits));
    return PLANS.computeIfAbsent(text, Bench::read);
  }

  private static Plan read(String text) {
    var read = Plans.read(SourceFile.of("plan.json", text.getBytes(UTF_8)), TEMPLATES, List.of());
    return read.plan().orElseThrow(() -> new AssertionError(read.faults().toString()));
  }

  /** Judged long after the day. */
  public Judgement judge() {
    return judge("2026-12-01 00:00");
  }

  /** Judged at a time of the day, or at a time with its date. */
  public Judgement judge(String at) {
    Instant moment = instant(time(at));
    Plan plan = plan();
    Lots assembled = assemble(plan, moment);
    Lot lot = assembled.lot("A1").orElseThrow(() -> new AssertionError(assembled.faults()));
    if (believed) {
      return Checks.judge(plan, lot, List.of(), moment);
    }
    Doubts.Result examined =
        Doubts.examine(plan, rules(), assembled.register(), lot, List.of(), plan.words());
    return Judging.judge(plan, examined, moment);
  }

  /** Judged with these faults, and with no rule for dirty data asked. */
  Judgement judge(List<Fault> faults) {
    Instant moment = instant("2026-12-01 00:00");
    Plan plan = plan();
    Lot lot = assemble(plan, moment).lot("A1").orElseThrow();
    return Checks.judge(plan, lot, faults, moment);
  }

  /** What the rules for dirty data say of the lot. */
  public List<Fault> doubts() {
    Plan plan = plan();
    Instant moment = instant("2026-12-01 00:00");
    Lots assembled = assemble(plan, moment);
    Lot lot = assembled.lot("A1").orElseThrow();
    Doubts.Result examined =
        Doubts.examine(plan, rules(), assembled.register(), lot, List.of(), plan.words());
    Judgement judged = Checks.judge(plan, examined.lot(), examined.faults(), moment);
    return examined.unused().apply(judged.usedRows()).faults();
  }

  private Lots assemble(Plan plan, Instant moment) {
    List<SourceFile> files = new ArrayList<>(logs);
    sheets.forEach(
        (name, text) ->
            files.add(SourceFile.of(day + "/" + name, text.toString().getBytes(UTF_8))));
    if (!layouts.isEmpty()) {
      String text = "{\"logs\": [" + String.join(",", layouts) + "]}";
      files.add(SourceFile.of(day + "/logs.json", text.getBytes(UTF_8)));
    }
    Day read = Readings.read(LocalDate.parse(day), files, new Hand(ZONE, '.', plan.practice()));
    return Lots.assemble(plan, List.of(read), moment);
  }

  static Instant instant(String local) {
    return LocalDateTime.parse(local.replace(' ', 'T')).atZone(ZONE).toInstant();
  }

  public Finding finding(String limit) {
    return found(judge(), limit);
  }

  static Finding found(Judgement judgement, String limit) {
    return judgement.findings().stream()
        .filter(finding -> finding.limit().id().equals(limit))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no finding on " + limit));
  }

  /** The verdict in words, with the value to two decimals: {@code "not met 200.02 ppm"}. */
  static String said(Finding finding) {
    return finding.verdict().words()
        + finding.measured().map(measured -> " " + shown(measured.value())).orElse("");
  }

  static String shown(Quantity value) {
    return value.value().rounded(2).toPlainString() + " " + value.unit();
  }

  /** All rows stand in one folder, whatever their day. */
  private static SourceFile ofOneDay(SourceFile practice) {
    String text = UTF_8.decode(practice.content()).toString();
    return SourceFile.of(
        practice.name(),
        text.replace("\"daysApart\": \"1\"", "\"daysApart\": \"400\"").getBytes(UTF_8));
  }

  /** Instruments without an error make the sums of a test easy to follow. */
  private static SourceFile ofExactInstruments(SourceFile rules) {
    String text = UTF_8.decode(rules.content()).toString();
    return SourceFile.of(
        rules.name(),
        text.replace("\"accuracy\": \"0.1 °F\"", "\"accuracy\": \"0 °F\"").getBytes(UTF_8));
  }

  /** Any limit covers what it says, so that a test of verdicts can take the simplest one. */
  private static SourceFile freelyCovered(SourceFile classes) {
    String text = new String(classes.bytes(), UTF_8);
    int from = text.indexOf("\"coverage\": [");
    String without = text.substring(0, from) + "\"coverage\": [],";
    String rest = text.substring(text.indexOf("\"facts\":", from));
    return SourceFile.of(classes.name(), (without + rest).getBytes(UTF_8));
  }

  private static SourceFile template(String name) {
    try {
      return SourceFile.of(name, Files.readAllBytes(Path.of(name)));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
