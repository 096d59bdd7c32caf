package org.flitchbook.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.document.Block.Signatures;
import org.flitchbook.document.Block.Sum;
import org.junit.jupiter.api.Test;

class ToTextTest {
  private static final Table LIMITS =
      new Table(
          "Limits",
          List.of(
              Sheetful.column("Limit", Table.Align.LEFT, 2),
              Sheetful.column("Worst", Table.Align.RIGHT, 0),
              new Table.Column("Verdict", Table.Align.LEFT, 0, false)),
          List.of(
              limit("Ingoing nitrite, dry cure on a skinless belly", "149.4 ppm", "met", Tone.PASS),
              limit("Cooling", "", "not shown", Tone.DOUBT)));

  private static Table.Row limit(String name, String worst, String verdict, Tone tone) {
    return new Table.Row(
        List.of(
            new Table.Cell(Text.of(name), Tone.PLAIN),
            new Table.Cell(Text.of(worst), Tone.PLAIN),
            new Table.Cell(Text.of(verdict), tone)));
  }

  private static Document document() {
    Chart chart = Sheetful.chart(List.of(), List.of(), List.of());
    return Sheetful.of(
        new Block.Banner(Tone.DOUBT, "Not shown", "One limit of seven."),
        new Facts(
            2,
            List.of(
                new Facts.Fact("Lot", Text.of("26047-B1")),
                new Facts.Fact("Green weight", Text.of("4,812 g")))),
        LIMITS,
        new Block.Heading(2, "Nitrite"),
        new Sum(
            List.of(
                new Sum.Line("Curing salt", "", "11.5 g"),
                new Sum.Line("Nitrite", "11.5 g × 6.25 ÷ 100", "0.71875 g"))),
        new Block.Paragraph(
            Text.of(
                new Text.Span("73.8 °F", Text.Style.STRUCK),
                new Text.Span(" 37.8 °F", Text.Style.PLAIN))),
        chart,
        new Block.Caution("Curing salt is poisonous in excess: weigh it, never spoon it."),
        new Signatures(List.of(new Signatures.Box("maker", "Prepared by", "Maud Achterberg", ""))));
  }

  @Test
  void a_document_is_set_for_a_terminal() {
    assertEquals(
        """
        Batch record 26047-B1
        ═════════════════════
        Juniper & treacle belly
        Wrenfold Smokeyard · plan 3

        ──────────────────────────────────────────────────
        ? Not shown
        One limit of seven.
        ──────────────────────────────────────────────────

        Lot           26047-B1
        Green weight  4,812 g

        Limits
        Limit                           Worst  Verdict
        ──────────────────────────────────────────────────
        Ingoing nitrite, dry cure   149.4 ppm  ✓ met
        on a skinless belly
        Cooling                                ? not shown

        Nitrite
        ───────

        Curing salt                          11.5 g
        Nitrite      11.5 g × 6.25 ÷ 100  =  0.71875 g

        [struck out: 73.8 °F] 37.8 °F

        [chart] in words

        ! Curing salt is poisonous in excess: weigh it,
          never spoon it.

        Prepared by
        Signature  ____________________________
        Name       Maud Achterberg
        Date       ____________  Time  _______

        times in EST
        """,
        document().toText(50));
  }

  @Test
  void a_table_too_wide_for_the_terminal_is_printed_row_by_row() {
    Table.Row row = Sheetful.row("2026-02-16/cure.csv", "2026-02-17/smoker.csv", "26047-B1");
    List<Table.Column> columns =
        List.of(
            Sheetful.column("First", Table.Align.LEFT, 1),
            Sheetful.column("Second", Table.Align.LEFT, 1),
            Sheetful.column("Lot", Table.Align.LEFT, 1));
    String text = Sheetful.of(new Table("", columns, List.of(row))).toText(40);
    assertTrue(
        text.contains(
            "First   2026-02-16/cure.csv\nSecond  2026-02-17/smoker.csv\nLot     26047-B1\n"),
        text);
  }

  @Test
  void no_line_is_wider_than_the_terminal_and_none_ends_in_a_space() {
    for (int width = Document.LEAST_WIDTH; width < 120; width += 7) {
      for (String line : document().toText(width).split("\n", -1)) {
        assertTrue(line.length() <= width && line.equals(line.stripTrailing()), line);
      }
    }
  }

  @Test
  void control_characters_do_not_reach_the_terminal() {
    String text = Sheetful.of(new Block.Paragraph(Text.of("red \u001b[31m alert"))).toText(60);
    assertTrue(text.contains("red [31m alert"), text);
  }

  @Test
  void a_scale_stands_in_characters_with_its_limit_in_the_same_place() {
    List<Table.Row> rows = new ArrayList<>();
    for (double at : new double[] {-1, -0.6, 0, 0.6, 1}) {
      rows.add(new Table.Row(List.of(Table.Cell.of(new Table.Scale(at), "in words"))));
    }
    Table table = new Table("", List.of(Sheetful.column("Margin", Table.Align.LEFT, 0)), rows);
    String text = Sheetful.of(table).toText(50);
    assertTrue(text.contains("◄────┼───\n──◆──┼───\n─────◆───\n─────┼─◆─\n─────┼──►\n"), text);
  }

  @Test
  void room_to_write_in_is_ruled() {
    Block blank = new Block.Blank("Cause, found and removed", 2, List.of("By", "Date"));
    String text = Sheetful.of(blank, new Block.Note(Text.of("Small print."))).toText(50);
    String line = "_".repeat(50) + "\n";
    String slots = "By ____________________________\nDate ____________________________\n";
    assertTrue(text.contains("Cause, found and removed\n" + line + line + slots), text);
    assertTrue(text.contains("\n\nSmall print.\n"), text);
  }
}
