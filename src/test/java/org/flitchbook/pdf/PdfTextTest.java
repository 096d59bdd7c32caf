package org.flitchbook.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Signatures;
import org.flitchbook.document.Document;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PdfTextTest {
  private static Block.Paragraph words(String text) {
    return new Block.Paragraph(Text.of(text));
  }

  @ParameterizedTest
  @EnumSource(Document.Paper.class)
  void the_first_page_has_the_answer_and_the_signatures_in_reading_order(Document.Paper paper)
      throws IOException {
    String page = Pages.texts(Pages.print(SampleRecord.on(paper))).get(0);
    List<String> expected =
        List.of(
            "Batch record 26047-B1",
            "Held: one limit not shown",
            "Green weight",
            "Ingoing nitrite",
            "≤ 200 ppm",
            "✓ met",
            "? not shown",
            "✗ not met",
            "… pending",
            "weigh it, never spoon it",
            "Prepared by the maker",
            "Maud Achterberg",
            "Reviewed before release");
    int at = 0;
    for (String words : expected) {
      int next = page.replace('\u00a0', ' ').indexOf(words, at);
      assertTrue(next >= at, words + " is not in its place in:\n" + page);
      at = next;
    }
  }

  @Test
  void each_page_carries_head_foot_and_number() throws IOException {
    List<String> pages = Pages.texts(words("one"), new Block.PageBreak(), words("two"));
    assertEquals(2, pages.size());
    for (int i = 0; i < 2; i++) {
      String page = pages.get(i).replace('\u00a0', ' ');
      assertTrue(page.contains("Wrenfold Smokeyard") && page.contains("plan version 3"), page);
      assertTrue(page.contains("times in EST"), page);
      assertTrue(page.contains("r1 · page " + (i + 1) + " of 2"), page);
    }
  }

  @Test
  void a_thousand_rows_come_out_once_each_under_a_head_on_every_page() throws IOException {
    List<String> pages = Pages.texts(Pages.table(1000));
    assertEquals(23, pages.size());
    List<String> times = new ArrayList<>();
    for (String page : pages) {
      assertTrue(page.contains("Time Probe Reading"), page);
      page.lines().filter(line -> line.startsWith("time ")).forEach(times::add);
    }
    assertEquals(1000, times.size());
    for (int i = 1; i <= 1000; i++) {
      assertEquals("time " + i + " P1 " + i + ".0 °F", times.get(i - 1));
    }
  }

  @Test
  void a_word_that_fits_its_column_is_never_cut() throws IOException {
    List<Table.Column> columns = new ArrayList<>();
    List<String> words = new ArrayList<>();
    for (int i = 0; i < 7; i++) {
      columns.add(new Table.Column("Limit " + i, Table.Align.LEFT, 1, i == 0));
      words.add("time at temperature, 6.5-log");
    }
    Table table = new Table("Limits", columns, List.of(Pages.row(words.toArray(String[]::new))));
    String text = String.join(" ", Pages.texts(table));
    assertEquals(7, text.split("temperature,", -1).length - 1, text);
  }

  @Test
  void the_last_page_of_a_table_never_holds_a_single_row() throws IOException {
    for (int rows = 26; rows < 44; rows++) {
      List<String> pages = Pages.texts(Pages.table(rows));
      String last = pages.get(pages.size() - 1);
      long found = last.lines().filter(line -> line.startsWith("time ")).count();
      assertTrue(found > 1, rows + " rows leave " + found + " on the last page");
    }
  }

  @Test
  void a_heading_is_never_last_on_a_page() throws IOException {
    for (int before = 34; before < 46; before++) {
      List<Block> blocks = new ArrayList<>();
      for (int i = 0; i < before; i++) {
        blocks.add(words("line " + i));
      }
      blocks.add(new Block.Heading(1, "Cure"));
      blocks.add(words("after the heading"));
      for (String page : Pages.texts(Pages.print(Pages.document(blocks)))) {
        assertEquals(page.contains("Cure"), page.contains("after the heading"), page);
      }
    }
  }

  @Test
  void signature_boxes_stay_on_one_page() throws IOException {
    for (int before = 24; before < 46; before += 2) {
      List<Block> blocks = new ArrayList<>();
      for (int i = 0; i < before; i++) {
        blocks.add(words("line " + i));
      }
      blocks.add(
          new Signatures(
              List.of(
                  new Signatures.Box("a", "Made by", "", ""),
                  new Signatures.Box("b", "Reviewed by", "", ""),
                  new Signatures.Box("c", "Closed by", "", ""))));
      for (String page : Pages.texts(Pages.print(Pages.document(blocks)))) {
        assertEquals(page.contains("Made by"), page.contains("Closed by"), page);
      }
    }
  }

  @Test
  void a_word_longer_than_its_column_is_cut_and_not_lost() throws IOException {
    String hash = "0123456789abcdef".repeat(20);
    List<Table.Column> columns =
        List.of(
            new Table.Column("File", Table.Align.LEFT, 1, true),
            new Table.Column("SHA-256", Table.Align.LEFT, 1, false));
    Table table = new Table("", columns, List.of(Pages.row("cure.csv", hash)));
    String page = Pages.texts(table).get(0).replace("\n", "");
    assertTrue(page.contains(hash), page);
  }

  @Test
  void a_row_taller_than_a_page_is_cut_between_lines() throws IOException {
    String many = "word ".repeat(4000);
    List<Table.Column> columns =
        List.of(
            new Table.Column("Note", Table.Align.LEFT, 1, true),
            new Table.Column("By", Table.Align.LEFT, 0, false));
    List<String> pages =
        Pages.texts(
            new Table("", columns, List.of(Pages.row(many, "MA"), Pages.row("next", "IQ"))));
    int words = pages.stream().flatMap(page -> page.lines()).mapToInt(PdfTextTest::count).sum();
    assertEquals(4000, words);
    assertTrue(pages.get(pages.size() - 1).contains("next IQ"));
  }

  private static int count(String line) {
    return (line.length() - line.replace("word", "").length()) / 4;
  }

  @Test
  void empty_cells_and_an_empty_table_are_set() throws IOException {
    Table cells = new Table("", Pages.table(1).columns(), List.of(Pages.row("", "", "")));
    Table bare = new Table("No readings", Pages.table(1).columns(), List.of());
    String page = Pages.texts(cells, bare).get(0);
    assertTrue(page.contains("No readings\nTime Probe Reading"), page);
  }

  @ParameterizedTest
  @CsvSource({
    "lot \u6e29\u5ea6 F,                       lot [2 letters of the script Han] F",
    "\u05e7\u05d5\u05d1 and lot,             [3 letters of the script Hebrew] and lot",
    "\u0645\u064f\u0645\u0643,                 [3 letters of the script Arabic]",
    "\u0915\u093f,                             [1 letter of the script Devanagari]",
    "\u3072\u30ab,                             '[1 letter of the script Hiragana][1 letter of the"
        + " script Katakana]'",
    "hot \ud83d\udd25\ufe0f!,                    hot [U+1F525]!",
    "\ue000,                                   [U+E000]",
    "cafe\u0301 u\u0308ber A\u030a,             caf\u00e9 \u00fcber \u00c5",
    "'a \u202egnp\u202c \u2066b\u2069 \u200ec',   a gnp b c",
    "so\u00adft ze\u200bro,                     soft zero",
    "\u0391\u0392 \u0416 \u1ebf \u2264 \u2103 \u2713, \u0391\u0392 \u0416 \u1ebf \u2264 \u2103"
        + " \u2713",
  })
  void what_the_font_cannot_show_is_named_and_nothing_is_reordered(String text, String shown)
      throws IOException {
    String page = Pages.texts(words("before " + text + " after")).get(0);
    assertTrue(page.contains("before " + shown + " after"), page);
  }

  @Test
  void a_control_character_is_left_out() throws IOException {
    String page = Pages.texts(words("fil\u0000let\u0007 \u001b[1mstrong\u007f\tend")).get(0);
    assertTrue(page.contains("fillet [1mstrong end"), page);
  }

  @Test
  void a_search_for_an_office_finds_no_ligature() throws IOException {
    String page = Pages.texts(words("the office files affidavits")).get(0);
    assertTrue(page.contains("the office files affidavits"), page);
    assertFalse(page.contains("\ufb03"), page);
  }

  @Test
  void dates_and_values_are_not_broken() throws IOException {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 400; i++) {
      text.append("2026-02-16 36.1–39.4 ");
    }
    for (String page : Pages.texts(words(text.toString()))) {
      page.lines()
          .filter(line -> line.startsWith("2") || line.startsWith("3"))
          .forEach(line -> assertTrue(line.matches("(2026-02-16|36.1–39.4| )+"), line));
    }
  }
}
