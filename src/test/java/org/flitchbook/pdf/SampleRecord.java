package org.flitchbook.pdf;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.Wording;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.document.Block.Signatures;
import org.flitchbook.document.Block.Sum;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Document;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.words.Words;

/** An invented batch record of the Wrenfold Smokeyard that uses every block of the model. */
public final class SampleRecord {
  private static final double[][] BELLY = {
    {0, 39.2}, {30, 55.9}, {60, 81.8}, {90, 104.5}, {120, 122.8}, {150, 137.3}, {180, 148.5},
    {185, 150.2}, {210, 143.1}, {240, 120.2}, {270, 97.4}, {300, 80.4}, {330, 67.9}, {360, 58.8},
    {390, 52.1}, {420, 47.3}, {450, 43.8}, {480, 41.2}, {510, 39.4}, {540, 38.1}
  };

  private SampleRecord() {}

  public static Document on(Document.Paper paper) {
    List<Block> blocks = new ArrayList<>(pageOne());
    blocks.add(new Block.PageBreak());
    blocks.addAll(cure());
    blocks.addAll(smoke());
    blocks.addAll(closing());
    return new Document(
        "Batch record 26047-B1",
        "Juniper & treacle belly bacon · heat treated, not fully cooked · day closed 24 February"
            + " 2026",
        new Words("en-US", Wording.ENGLISH.texts(), Map.of()),
        "record 26047-B1 r1",
        Instant.parse("2026-02-24T22:30:00Z"),
        paper,
        new Document.Running(
            "Wrenfold Smokeyard · Harrow Fen · establishment W-104\n"
                + "Juniper & treacle belly bacon · lot 26047-B1",
            "plan version 3 of 2 January 2026\nrecord 26047-B1 r1 · 6f1c 09ab 77d2",
            "Times are US Eastern Standard Time, five hours behind UTC",
            "judged 24 Feb 2026 17:30"),
        Optional.of(code()),
        blocks);
  }

  /** Of a pattern that is no code: the printer draws what it is given. */
  private static Document.Code code() {
    return new Document.Code(
        List.of("#.#.#", ".###.", "##.##", ".#.#.", "#...#"),
        "Code that holds line 12 of the ledger with its hash",
        List.of("Ledger before this close", "line 12", "3f2a 9c1b 77aa 0c1d 55e2"));
  }

  private static List<Block> pageOne() {
    return List.of(
        new Block.Banner(
            Tone.DOUBT,
            "Held: one limit not shown",
            "Six of seven critical limits of plan version 3 were met. The second stage of cooling"
                + " is not shown, because readings are missing from 13:02 to 14:31."),
        new Facts(
            3,
            List.of(
                fact("Lot", "26047-B1"),
                fact("Product", "Juniper & treacle belly bacon"),
                fact("Class, regime", "heat treated, not fully cooked · US inspected"),
                fact("Green weight", "4,812 g, one belly, skinless, 38 mm"),
                fact("Packed", "26 × 150 g, 310 g ends, 12 g loss"),
                fact("Release", "not released: deviation D-2026-03 open"))),
        limits(),
        new Block.Caution(
            "Curing salt is poisonous in excess: weigh it, never spoon it. The limits are those of"
                + " the plan named above; confirm them with the local authority or a process"
                + " authority. This record supports a licensed decision and replaces none."),
        new Signatures(
            List.of(
                new Signatures.Box(
                    "prepared",
                    "Prepared by the maker",
                    "Maud Achterberg",
                    "I made the entries of this record at the times stated."),
                new Signatures.Box(
                    "reviewed",
                    "Reviewed before release",
                    "Ismet Quill",
                    "I have reviewed this record for completeness, limits and actions."))));
  }

  private static Facts.Fact fact(String label, String value) {
    return new Facts.Fact(label, Text.of(value));
  }

  private static Table limits() {
    List<Table.Column> columns =
        List.of(
            new Table.Column("CCP", Table.Align.CENTER, 0, false),
            new Table.Column("Limit", Table.Align.LEFT, 4, true),
            new Table.Column("Worst value", Table.Align.RIGHT, 1, false),
            new Table.Column("Limit value", Table.Align.RIGHT, 1, false),
            new Table.Column("Margin", Table.Align.RIGHT, 1, false),
            new Table.Column("Verdict", Table.Align.LEFT, 0, false),
            new Table.Column("inside | over", Table.Align.LEFT, 0, false),
            new Table.Column("Source", Table.Align.LEFT, 3, false));
    return new Table(
        "Limits of the plan",
        columns,
        List.of(
            row(
                Tone.PASS,
                "1",
                "Ingoing nitrite",
                "149.4 ppm",
                "≤ 200 ppm",
                "50.6 ppm",
                "met",
                "9 CFR 424.22(b)(3)"),
            row(
                Tone.PASS,
                "1",
                "No nitrate in bacon",
                "0 ppm",
                "= 0 ppm",
                "–",
                "met",
                "9 CFR 424.22(b)"),
            row(
                Tone.PASS,
                "2",
                "Cold holding in cure",
                "39.4 °F",
                "≤ 41.0 °F",
                "1.6 °F",
                "met",
                "plan, own limit"),
            row(
                Tone.PASS,
                "3",
                "Come-up, 50 to 130 °F",
                "1 h 52 min",
                "≤ 6 h",
                "4 h 08 min",
                "met",
                "agency cooling guideline, table 2"),
            row(
                Tone.PASS,
                "4",
                "Cooling, 130 to 80 °F",
                "1 h 14 min",
                "≤ 1 h 30 min",
                "16 min",
                "met",
                "agency cooling guideline, option A"),
            row(
                Tone.DOUBT,
                "4",
                "Cooling, 80 to 40 °F",
                "NOT RECORDED",
                "≤ 5 h",
                "–",
                "not shown",
                "agency cooling guideline, option A"),
            row(
                Tone.FAIL,
                "–",
                "Turning in cure, each day",
                "31 h",
                "≤ 26 h",
                "−5 h",
                "not met",
                "plan, operating limit"),
            row(
                Tone.WAIT,
                "5",
                "Cold holding until dispatch",
                "38.1 °F",
                "≤ 41.0 °F",
                "2.9 °F",
                "pending",
                "plan, own limit")));
  }

  private static Table.Row row(Tone tone, String... words) {
    List<Table.Cell> cells = new ArrayList<>();
    for (int i = 0; i < words.length; i++) {
      cells.add(new Table.Cell(Text.of(words[i]), i == 5 ? tone : Tone.PLAIN));
    }
    cells.add(6, scale(tone));
    return new Table.Row(cells);
  }

  private static Table.Cell scale(Tone tone) {
    return switch (tone) {
      case PASS -> Table.Cell.of(new Table.Scale(-0.25), "a quarter inside the limit");
      case FAIL -> Table.Cell.of(new Table.Scale(1), "far over the limit");
      default -> new Table.Cell(Text.of("–"), Tone.PLAIN);
    };
  }

  private static List<Block> cure() {
    return List.of(
        new Block.Heading(1, "Cure"),
        new Block.Heading(2, "Ingoing nitrite, worked"),
        new Block.Paragraph(
            Text.of(
                new Text.Span(
                    "Dry cure on a skinless belly. The strength of the curing salt is read off its"
                        + " bag, lot C1-7741; the green weight is the weight before the cure"
                        + " touched the meat. ",
                    Text.Style.PLAIN),
                new Text.Span("The result is judged unrounded.", Text.Style.STRONG),
                new Text.Span(" Scale S-01 reads to 0.1 g.", Text.Style.MUTED))),
        new Sum(
            List.of(
                new Sum.Line("Green weight", "", "4,812 g"),
                new Sum.Line("Curing salt, Cure No. 1", "", "11.5 g"),
                new Sum.Line("Sodium nitrite in it", "11.5 g × 6.25 ÷ 100", "0.71875 g"),
                new Sum.Line("Ingoing nitrite", "0.71875 g ÷ 4,812 g × 1,000,000", "149.366 ppm"))),
        new Block.Heading(2, "Days in cure"),
        new Table(
            "Turns and cooler",
            List.of(
                new Table.Column("Time", Table.Align.LEFT, 0, true),
                new Table.Column("What", Table.Align.LEFT, 1, false),
                new Table.Column("Value", Table.Align.RIGHT, 1, false),
                new Table.Column("By", Table.Align.LEFT, 0, false),
                new Table.Column("Instrument", Table.Align.LEFT, 1, false),
                new Table.Column("Evidence", Table.Align.LEFT, 1, false)),
            turns()),
        new Block.Heading(3, "Corrected entries"),
        new Block.Paragraph(
            Text.of(
                new Text.Span("Cooler 18 February 09:00: ", Text.Style.PLAIN),
                new Text.Span("73.8 °F", Text.Style.STRUCK),
                new Text.Span(
                    " 37.8 °F, corrected by MA the same day: digits swapped.", Text.Style.PLAIN))));
  }

  private static List<Table.Row> turns() {
    List<Table.Row> rows = new ArrayList<>();
    for (int day = 17; day <= 23; day++) {
      rows.add(
          plain("Feb " + day + " 09:05", "turned", "", "MA", "", "2026-02-" + day + "/cure.csv:2"));
      rows.add(
          plain(
              "Feb " + day + " 09:06",
              "cooler temperature",
              (day + 360) / 10.0 + " °F",
              "MA",
              "HT-3",
              "2026-02-" + day + "/cure.csv:3"));
    }
    return rows;
  }

  private static Table.Row plain(String... words) {
    List<Table.Cell> cells = new ArrayList<>();
    for (String word : words) {
      cells.add(new Table.Cell(Text.of(word), Tone.PLAIN));
    }
    return new Table.Row(cells);
  }

  private static List<Block> smoke() {
    return List.of(
        new Block.Heading(1, "Smoke and chill"),
        new Block.Paragraph(
            Text.of(
                "Probe P1 sat in the thickest part of the belly, P2 in the thin end. The fan fridge"
                    + " was at 36 °F when the belly went in.")),
        smokeChart(),
        new Table(
            "Crossings and checkpoints",
            List.of(
                new Table.Column("What", Table.Align.LEFT, 2, true),
                new Table.Column("Conservative", Table.Align.RIGHT, 1, false),
                new Table.Column("Interpolated", Table.Align.RIGHT, 1, false),
                new Table.Column("Reading", Table.Align.RIGHT, 1, false),
                new Table.Column("Evidence", Table.Align.LEFT, 2, false)),
            List.of(
                plain("Into smoke", "08:02", "", "39.2 °F", "2026-02-24/smoke.csv:2"),
                plain(
                    "130 °F rising", "10:17", "10:16:24", "130.2 °F", "2026-02-24/smoker.csv:137"),
                plain(
                    "Hand check, out of smoke", "11:07", "", "150.4 °F", "2026-02-24/smoke.csv:9"),
                plain(
                    "130 °F falling", "11:48", "11:49:10", "130.4 °F", "2026-02-24/fridge.csv:14"),
                plain(
                    "80 °F falling", "13:02", "13:02:30", "79.8 °F", "2026-02-24/fridge.csv:88"))));
  }

  static Chart smokeChart() {
    return new Chart(
        "Internal temperature in smoke and chill, 24 February",
        "Internal temperature of probes P1 and P2 from 08:02 to 17:02. P1 rises to 150.2 °F at"
            + " 11:07, falls through 130 °F at 11:48 and 80 °F at 13:02; no readings from 13:02 to"
            + " 14:31.",
        new Chart.Axis("hours after the belly went into smoke, and time of day", 0, 540, hours()),
        new Chart.Axis("°F, in grey °C", 30, 210, degrees()),
        List.of(
            new Chart.Curve(
                "P1, thickest part",
                Chart.Stroke.SOLID,
                List.of(belly(0, 300, 0), belly(390, 540, 0))),
            new Chart.Curve("P2, thin end", Chart.Stroke.DASHED, List.of(belly(0, 540, -9))),
            new Chart.Curve("chamber, then fridge", Chart.Stroke.THIN, List.of(air()))),
        List.of(
            new Chart.Guide("130 °F", 130),
            new Chart.Guide("80 °F", 80),
            new Chart.Guide("40 °F", 40)),
        List.of(
            new Chart.Marks(
                "by hand",
                Chart.Shape.DIAMOND,
                List.of(new Chart.Marker(185, 150.4, "11:07 HT-3 150.4 °F"))),
            new Chart.Marks(
                "crossing",
                Chart.Shape.DOT,
                List.of(
                    new Chart.Marker(135, 130.2, "10:17 130 °F"),
                    new Chart.Marker(226, 130.4, "11:48 130 °F"),
                    new Chart.Marker(300, 80, "13:02 80 °F"))),
            new Chart.Marks(
                "doesn't count", Chart.Shape.RING, List.of(new Chart.Marker(495, 60, ""))),
            new Chart.Marks(
                "into fridge", Chart.Shape.STROKE, List.of(new Chart.Marker(215, 30, "11:37")))),
        List.of(
            new Chart.Band(0, 185, "smoke"),
            new Chart.Band(185, 215, "hang"),
            new Chart.Band(215, 540, "chill"),
            new Chart.Band(300, 389, "no readings, 89 min")),
        230);
  }

  private static List<Chart.Point> belly(double from, double to, double offset) {
    List<Chart.Point> points = new ArrayList<>();
    for (int i = 1; i < BELLY.length; i++) {
      for (double t = BELLY[i - 1][0]; t < BELLY[i][0]; t++) {
        double share = (t - BELLY[i - 1][0]) / (BELLY[i][0] - BELLY[i - 1][0]);
        double value = BELLY[i - 1][1] + share * (BELLY[i][1] - BELLY[i - 1][1]);
        if (t >= from && t <= to) {
          points.add(new Chart.Point(t, value + offset * Math.sin(t / 172)));
        }
      }
    }
    return points;
  }

  private static List<Chart.Point> air() {
    List<Chart.Point> points = new ArrayList<>();
    for (int t = 0; t <= 540; t++) {
      double smoke = 199 - 123 * Math.exp(-t / 15.0) + 3 * Math.sin(t / 4.0);
      double chill = 36 + 12 * Math.exp(-(t - 215) / 60.0) + 1.5 * Math.sin(t / 3.0);
      points.add(new Chart.Point(t, t < 185 ? smoke : t < 215 ? 64 : chill));
    }
    return points;
  }

  private static List<Chart.Tick> hours() {
    List<Chart.Tick> ticks = new ArrayList<>();
    for (int h = 0; h <= 9; h++) {
      ticks.add(
          new Chart.Tick(h * 60, h + " h", String.format(java.util.Locale.ROOT, "%02d:02", 8 + h)));
    }
    return ticks;
  }

  private static List<Chart.Tick> degrees() {
    List<Chart.Tick> ticks = new ArrayList<>();
    for (int f = 40; f <= 200; f += 20) {
      ticks.add(new Chart.Tick(f, String.valueOf(f), String.valueOf(Math.round((f - 32) / 1.8))));
    }
    return ticks;
  }

  private static List<Block> closing() {
    return List.of(
        new Block.Heading(1, "Deviations"),
        new Block.Banner(
            Tone.FAIL, "D-2026-03 open", "The turn of 19 February was five hours late."),
        new Facts(
            2,
            List.of(
                fact("Found by", "IQ, 24 February 2026 17:12"),
                fact("Held", "26 packs, 4,210 g, fridge F2, tag H-11"),
                fact("Cause", "The helper's shift was moved and the list was not."),
                new Facts.Fact("Prevention", Text.muted("NOT RECORDED")))),
        new Block.Blank(
            "Prevention: what is changed, and by when", 2, List.of("By", "Date", "Time")),
        new Block.Note(
            Text.of("9 CFR 417.3(a); what is written by hand is typed in the day after.")),
        new Block.Heading(1, "Instruments in force"),
        new Table(
            "",
            List.of(
                new Table.Column("Instrument", Table.Align.LEFT, 1, true),
                new Table.Column("Check", Table.Align.LEFT, 2, false),
                new Table.Column("Reading", Table.Align.RIGHT, 1, false),
                new Table.Column("Error", Table.Align.RIGHT, 1, false),
                new Table.Column("In force until", Table.Align.LEFT, 1, false)),
            List.of(
                plain("HT-3", "ice point, 23 February 2026", "32.4 °F", "+0.4 °F", "25 March 2026"),
                plain(
                    "LG-A, probes P1 and P2",
                    "compared with HT-3",
                    "150.2 °F",
                    "−0.2 °F",
                    "24 May 2026"),
                plain("S-01", "check weight 100 g", "100.0 g", "0.0 g", "24 February 2026"))));
  }
}
