package org.flitchbook.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that would exhaust or crash a reader that trusts them. */
final class HostileTest {

  private static List<String> said(byte[] bytes) {
    return Json.read("plan.json", bytes).faults().stream().map(Fault::toString).toList();
  }

  @Test
  void an_empty_file_is_called_one() {
    assertEquals(List.of("plan.json:1: found an empty file, expected JSON"), said(new byte[0]));
    assertEquals(
        List.of("plan.json:3: found an empty file, expected JSON"), said(" \n\n".getBytes(UTF_8)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"1e999999999", "-1E999999999", "1e-999999999", "1e2147483647"})
  void a_number_with_a_huge_exponent_is_shown_as_it_is_written(String number) {
    record Skipping(Optional<Integer> skip) {}
    SourceFile file = SourceFile.of("plan.json", ("{\"skip\": " + number + "}").getBytes(UTF_8));
    Binder.Bound<Skipping> bound = Binder.PLAIN.read(file, Skipping.class);
    List<Fault> faults = bound.faults();
    assertEquals(Optional.empty(), bound.value().orElseThrow().skip());
    assertEquals(1, faults.size());
    assertEquals("a whole number", faults.get(0).expected().toString());
    assertTrue(faults.get(0).found().toString().length() < 20, faults.get(0).found()::toString);
  }

  @Test
  void an_exponent_that_no_number_has_is_a_fault() {
    List<String> said = said("{\n\"a\": 1e99999999999}".getBytes(UTF_8));
    assertEquals(1, said.size());
    assertTrue(said.get(0).startsWith("plan.json:2: found "), said.get(0));
  }

  @Test
  void bytes_that_are_no_UTF_8_are_a_fault() {
    byte[] bytes = "{\n\"a\": \"?\"}".getBytes(UTF_8);
    bytes[8] = (byte) 0xB0;
    List<String> said = said(bytes);
    assertEquals(1, said.size());
    assertTrue(said.get(0).startsWith("plan.json:2: found Invalid UTF-8"), said.get(0));
  }

  @Test
  void bytes_that_look_like_UTF_32_and_are_none_are_a_fault() {
    byte[] bytes = {0, 0, 0, '{', 0x7F, 0x7F, 0x7F, 0x7F, 0, 0, 0, '}'};
    assertEquals(1, said(bytes).size());
    assertEquals(1, said(new byte[] {0, 0, 0, '{', 0, 0}).size());
  }

  @Test
  void a_text_is_shown_on_one_line_and_cut() {
    String text = "{\"a\": \"x\\ny" + "z".repeat(500) + "\"}";
    Node.Obj object = Json.read("plan.json", text.getBytes(UTF_8)).object().orElseThrow();
    String shown = object.members().get("a").shown();
    assertEquals("\"x y" + "z".repeat(77) + "…\"", shown);
  }
}
