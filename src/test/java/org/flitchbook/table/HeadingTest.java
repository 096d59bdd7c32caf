package org.flitchbook.table;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The delimiter is told by the heading, and line ends of every kind are counted alike. */
final class HeadingTest {

  @Test
  void a_delimiter_in_quotes_does_not_count() {
    Collected read = Collected.of("\"a;b;c;d\",e,f\n1,2,3\n", UTF_8);
    assertEquals(',', read.delimiter());
    assertEquals(List.of("1: a;b;c;d | e | f", "2: 1 | 2 | 3"), read.rows());
  }

  @Test
  void a_quote_doubled_in_quotes_does_not_end_them() {
    assertEquals(',', Collected.of("\"a\"\";;\"\"\",b\n1,2\n", UTF_8).delimiter());
  }

  @Test
  void a_quote_inside_a_bare_word_is_a_letter() {
    Collected read = Collected.of("5\" slab;b,c;d\n1;2;3\n", UTF_8);
    assertEquals(List.of("1: 5\" slab | b,c | d", "2: 1 | 2 | 3"), read.rows());
  }

  @Test
  void a_heading_goes_on_behind_a_line_break_in_quotes() {
    Collected read = Collected.of("\"Temp,\n1\";Air;Meat\n1;2;3\n", UTF_8);
    assertEquals(';', read.delimiter());
    assertEquals(List.of("1: Temp,\n1 | Air | Meat", "3: 1 | 2 | 3"), read.rows());
  }

  @Test
  void lines_that_end_with_CR_alone_are_skipped_one_by_one() {
    Layout skipTwo = new Layout(Optional.empty(), Optional.empty(), 2);
    Collected read = Collected.of("x\ry\ra,b\r1,2\r".getBytes(UTF_8), skipTwo);
    assertEquals(List.of("3: a | b", "4: 1 | 2"), read.rows());
  }

  @Test
  void a_NUL_byte_behind_CR_alone_has_its_physical_line() {
    assertEquals(
        List.of("broken " + Collected.FILE + ":3: found a NUL byte, expected text"),
        Collected.of("a,b\r1,2\r3,\0\r", UTF_8).said());
  }
}
