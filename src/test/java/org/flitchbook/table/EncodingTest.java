package org.flitchbook.table;

import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.Charset;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

final class EncodingTest {

  private static final String TEXT = "unit,n\n°F,1\n";
  private static final List<String> ROWS = List.of("1: unit | n", "2: °F | 1");
  private static final Charset WINDOWS = Charset.forName("windows-1252");

  private static byte[] marked(String text, Charset charset) {
    return ("\uFEFF" + text).getBytes(charset);
  }

  static Stream<Arguments> silent() {
    return Stream.of(
        Arguments.of("UTF-8", TEXT.getBytes(UTF_8), Layout.OPEN),
        Arguments.of("UTF-8 with a mark", marked(TEXT, UTF_8), Layout.OPEN),
        Arguments.of("UTF-16 LE with a mark", marked(TEXT, UTF_16LE), Layout.OPEN),
        Arguments.of("UTF-16 BE with a mark", marked(TEXT, UTF_16BE), Layout.OPEN),
        Arguments.of(
            "Windows-1252 stated", TEXT.getBytes(WINDOWS), Collected.stated("windows-1252")),
        Arguments.of("ISO-8859-1 stated", TEXT.getBytes(WINDOWS), Collected.stated("ISO-8859-1")),
        Arguments.of("UTF-16 LE stated", TEXT.getBytes(UTF_16LE), Collected.stated("utf-16le")),
        Arguments.of("UTF-16 BE stated", TEXT.getBytes(UTF_16BE), Collected.stated("utf-16be")),
        Arguments.of("a mark wins", marked(TEXT, UTF_8), Collected.stated("windows-1252")));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("silent")
  void the_degree_sign_survives(String called, byte[] bytes, Layout layout) {
    Collected read = Collected.of(bytes, layout);
    assertEquals(ROWS, read.rows());
    assertEquals(List.of(), read.said());
  }

  @Test
  void Windows_1252_that_nobody_stated_is_read_and_noted() {
    Collected read = Collected.of(TEXT.getBytes(WINDOWS), Layout.OPEN);
    assertEquals(ROWS, read.rows());
    assertEquals(
        List.of(
            "note "
                + Collected.FILE
                + ":2: found bytes that are no UTF-8, expected UTF-8; read as Windows-1252"),
        read.said());
  }

  static Stream<Arguments> broken() {
    byte[] windows = TEXT.getBytes(WINDOWS);
    byte[] odd = {'a', 0, 'b'};
    byte[] neither = {'a', '\n', (byte) 0x81, '\n'};
    return Stream.of(
        Arguments.of(windows, "utf-8", "2: found bytes that are no UTF-8, expected UTF-8 text"),
        Arguments.of(
            odd, "utf-16le", "1: found bytes that are no UTF-16LE, expected UTF-16LE text"),
        Arguments.of(
            neither,
            "windows-1252",
            "2: found bytes that are no windows-1252, expected windows-1252 text"),
        Arguments.of(
            neither, "", "2: found bytes that are no text, expected UTF-8 or Windows-1252"));
  }

  @ParameterizedTest(name = "{2}")
  @MethodSource("broken")
  void bytes_that_do_not_fit_are_broken(byte[] bytes, String charset, String said) {
    Layout layout = charset.isEmpty() ? Layout.OPEN : Collected.stated(charset);
    Collected read = Collected.of(bytes, layout);
    assertEquals(List.of("broken " + Collected.FILE + ":" + said), read.said());
    assertEquals(List.of(), read.rows());
  }

  @Test
  void UTF_16_without_a_mark_that_nobody_stated_is_refused_for_its_NUL_bytes() {
    assertEquals(
        List.of("broken " + Collected.FILE + ":1: found a NUL byte, expected text"),
        Collected.of("a,b\n1,2\n", UTF_16LE).said());
  }

  @ParameterizedTest
  @CsvSource({"utf-8, true", "UTF-16, true", "Windows-1252, true", "cp437, false", "'', false"})
  void only_charsets_of_the_list_can_be_stated(String name, boolean known) {
    assertEquals(known, Tables.charset(name).isPresent());
  }
}
