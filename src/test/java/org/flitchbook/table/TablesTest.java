package org.flitchbook.table;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

final class TablesTest {

  private static Arguments row(String called, String text, String... rows) {
    return Arguments.of(called, text, List.of(rows));
  }

  static Stream<Arguments> readable() {
    return Stream.of(
        row("commas", "a,b\n1,2\n", "1: a | b", "2: 1 | 2"),
        row("semicolons", "a;b\n1,5;2\n", "1: a | b", "2: 1,5 | 2"),
        row("tabs", "a\tb\n1\t2\n", "1: a | b", "2: 1 | 2"),
        row("one word", "a\n1\n2\n", "1: a", "2: 1", "3: 2"),
        row("a heading alone", "a,b\n", "1: a | b"),
        row("a heading alone without a line end", "a,b", "1: a | b"),
        row("CR LF", "a,b\r\n1,2\r\n3,4\r\n", "1: a | b", "2: 1 | 2", "3: 3 | 4"),
        row("CR alone", "a,b\r1,2\r3,4\r", "1: a | b", "2: 1 | 2", "3: 3 | 4"),
        row("no line end at the end", "a,b\n1,2", "1: a | b", "2: 1 | 2"),
        row("blank lines are counted", "a,b\n\n\n1,2\n\n3,4\n", "1: a | b", "4: 1 | 2", "6: 3 | 4"),
        row("blank CR LF lines", "a,b\r\n\r\n1,2\r\n", "1: a | b", "3: 1 | 2"),
        row("rows of delimiters alone are blank", "a,b\n,\n1,2\n", "1: a | b", "3: 1 | 2"),
        row("rows of white space are blank", "a,b\n  , \t\n1,2\n", "1: a | b", "3: 1 | 2"),
        row("white space at the ends goes", " a , b \n 1 ,\t2 \n", "1: a | b", "2: 1 | 2"),
        row("quotes", "a,b\n\"1,5\",\"say \"\"x\"\"\"\n", "1: a | b", "2: 1,5 | say \"x\""),
        row("a quote inside a bare cell", "a,b\n5\" slab,2\n", "1: a | b", "2: 5\" slab | 2"),
        row("short and long rows", "a,b\n1\n1,2,3\n", "1: a | b", "2: 1", "3: 1 | 2 | 3"),
        row(
            "a line break in a cell",
            "a,b\n\"x\ny\nz\",2\n3,4\n",
            "1: a | b",
            "2: x\ny\nz | 2",
            "5: 3 | 4"),
        row(
            "a CR LF in a cell",
            "a,b\r\n\"x\r\ny\",2\r\n3,4\r\n",
            "1: a | b",
            "2: x\r\ny | 2",
            "4: 3 | 4"),
        row("a blank line in a cell", "a\n\"x\n\ny\"\n3\n", "1: a", "2: x\n\ny", "5: 3"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("readable")
  void rows_keep_their_physical_lines(String called, String text, List<String> rows) {
    Collected read = Collected.of(text, UTF_8);
    assertEquals(rows, read.rows());
    assertEquals(List.of(), read.said());
  }

  static Stream<Arguments> unreadable() {
    String file = Collected.FILE;
    return Stream.of(
        row(
            "nothing at all",
            "",
            "broken "
                + file
                + ": found an empty file, expected a line of columns and rows under it"),
        row(
            "a blank file",
            "\n\n",
            "broken " + file + ":1: found no heading, expected a line of columns"),
        row(
            "a blank line before the heading",
            "\na,b\n1,2\n",
            "broken " + file + ":1: found no heading, expected a line of columns"),
        row(
            "a quote that never closes is told at its opening",
            "a,b\n1,2\n3,\"4\n5,6\n7,8\n",
            "broken "
                + file
                + ":3: found a quote that never closes, expected \" at the end of the cell"),
        row(
            "a quote that never closes in the heading",
            "a,\"b\n1,2\n",
            "broken "
                + file
                + ":1: found a quote that never closes, expected \" at the end of the cell"),
        row(
            "text behind a closing quote",
            "a,b\n1,2\n\"3\"x,4\n",
            "broken "
                + file
                + ":3: found text behind a closing quote, expected a delimiter, or \"\" inside"),
        row(
            "a NUL byte",
            "a,b\n1,2\n3,\0\n",
            "broken " + file + ":3: found a NUL byte, expected text"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("unreadable")
  void what_is_no_table_is_broken(String called, String text, List<String> said) {
    assertEquals(said, Collected.of(text, UTF_8).said());
  }

  @Test
  void rows_before_a_broken_place_are_handed_over() {
    assertEquals(
        List.of("1: a | b", "2: 1 | 2"), Collected.of("a,b\n1,2\n\"3\"x,4\n", UTF_8).rows());
  }

  @Test
  void skipped_lines_are_counted() {
    Layout skipTwo = new Layout(Optional.empty(), Optional.empty(), 2);
    byte[] bytes = "Logger 7\r\nevery;1;min;\"\r\nTime,P1\r\n1,2\r\n".getBytes(UTF_8);
    Collected read = Collected.of(bytes, skipTwo);
    assertEquals(List.of("3: Time | P1", "4: 1 | 2"), read.rows());
    assertEquals(List.of(), read.said());
  }

  @Test
  void a_fault_behind_skipped_lines_has_its_physical_line() {
    Layout skipTwo = new Layout(Optional.empty(), Optional.empty(), 2);
    assertEquals(
        List.of(
            "broken "
                + Collected.FILE
                + ":4: found text behind a closing quote, expected a delimiter, or \"\" inside"),
        Collected.of("x\ny\na,b\n\"1\"2,3\n".getBytes(UTF_8), skipTwo).said());
  }

  @Test
  void skipping_the_whole_file_leaves_no_heading() {
    Layout skipNine = new Layout(Optional.empty(), Optional.empty(), 9);
    assertEquals(
        List.of("broken " + Collected.FILE + ":10: found no heading, expected a line of columns"),
        Collected.of("a,b\n1,2\n".getBytes(UTF_8), skipNine).said());
  }

  @Test
  void fewer_than_no_lines_cannot_be_skipped() {
    assertThrows(
        IllegalArgumentException.class, () -> new Layout(Optional.empty(), Optional.empty(), -1));
  }

  @Test
  void a_stated_delimiter_wins_over_the_heading() {
    Layout semicolon = new Layout(Optional.empty(), Optional.of(';'), 0);
    assertEquals(
        List.of("1: a,b,c | d", "2: 1,5 | 2"),
        Collected.of("a,b,c;d\n1,5;2\n".getBytes(UTF_8), semicolon).rows());
  }

  @Test
  void sixty_thousand_rows_are_all_handed_over() {
    StringBuilder text = new StringBuilder("Time,P1\n");
    for (int i = 0; i < 60_000; i++) {
      text.append(i).append(",4.5\n");
    }
    Collected read = Collected.of(text.toString(), UTF_8);
    assertEquals(60_000, read.count());
    assertEquals("60001: 59999 | 4.5", read.last());
    assertEquals(List.of(), read.said());
  }

  @Test
  void a_cell_of_a_million_letters_is_kept_whole() {
    String longest = "x".repeat(1_000_000);
    Collected read = Collected.of("a,b\n1," + longest + "\n2,y\n", UTF_8);
    assertEquals(List.of("1: a | b", "2: 1 | " + longest, "3: 2 | y"), read.rows());
  }

  /** Each would else be brought into memory as one row. */
  @ParameterizedTest
  @ValueSource(strings = {"a,b\n1,2\n3,\"4", "a,b\n1,2\n3,4"})
  void a_row_of_more_than_four_million_letters_is_refused_with_its_line(String begin) {
    Collected read = Collected.of(begin + "x".repeat(4_010_000) + "\n", UTF_8);
    assertEquals(
        List.of(
            "broken "
                + Collected.FILE
                + ":3: found more than 4 million letters in one row, expected a row that ends, and"
                + " quotes that close"),
        read.said());
  }

  @Test
  void a_heading_of_more_than_four_million_letters_is_refused_too() {
    assertEquals(
        "broken "
            + Collected.FILE
            + ":1: found more than 4 million letters in one row, expected a row that ends, and"
            + " quotes that close",
        Collected.of("x".repeat(4_010_000), UTF_8).said().get(0));
  }

  /** By the delimiter of the heading; a quote may stand anywhere in such a line. */
  @Test
  void the_lines_that_are_passed_over_are_handed_over_behind_the_heading() {
    String text = "Logger 7\r\n\"a;b\";5\" slab; c\n\na;b\n1;2\n";
    Layout layout = new Layout(Optional.empty(), Optional.empty(), 3);
    Collected read = Collected.of(text.getBytes(UTF_8), layout);
    assertEquals(List.of("4: a | b", "5: 1 | 2"), read.rows());
    assertEquals(List.of("1: Logger 7", "2: a;b | 5 slab; c", "3: "), read.skipped());
  }
}
