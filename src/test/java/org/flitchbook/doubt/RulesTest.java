package org.flitchbook.doubt;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said of a file of rules that is not as it should be. */
final class RulesTest {

  private static final int SHIPPED = 68;

  private static String text() throws IOException {
    return Files.readString(Path.of("templates", "doubts.json"));
  }

  private static Doubts.Rules read(String text) {
    return Doubts.rules(SourceFile.of("templates/doubts.json", text.getBytes(UTF_8)));
  }

  @Test
  void the_rules_of_the_tool_are_without_fault() throws IOException {
    Doubts.Rules rules = read(text());
    assertEquals(List.of(), rules.faults());
    assertEquals(SHIPPED, rules.all().size());
  }

  /** One thing replaced, how many rules are lost by it, and the fault. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "\"back\": \"10 °F\", | '' | 1 | templates/doubts.json:96:rules[15].back: found no"
            + " \"back\", expected a temperature in °C or °F there",
        "\"back\": \"10 °F\" | \"back\": \"10 min\" | 1 | templates/doubts.json:99:rules[15].back:"
            + " found \"10 min\", expected a temperature in °C or °F",
        "\"entries\": \"5\" | \"entries\": \"five\" | 1 |"
            + " templates/doubts.json:205:rules[32].entries: found \"five\", expected a whole"
            + " number in quotes",
        "\"above\": \"1 %\" | \"above\": \"1 g\" | 1 | templates/doubts.json:176:rules[28].above:"
            + " found \"1 g\", expected a share in ppm or %",
        "\"within\": \"60 min\", | \"within\": \"60 min\", \"often\": \"1 d\", | 0 |"
            + " templates/doubts.json:160:rules[25].often: found the key \"often\", expected one of"
            + " rule, severity, source, near, within",
        "\"severity\": \"stop\" | \"severity\": \"broken\" | 1 |"
            + " templates/doubts.json:19:rules[2].severity: found \"broken\", expected ask, note or"
            + " stop",
        "\"rule\": \"late entry\" | \"rule\": \"entered days later\" | 0 |"
            + " templates/doubts.json:215:rules[34].rule: found \"entered days later\" twice,"
            + " expected each once",
      })
  void what_is_wrong_with_a_rule_is_said_where_it_stands(
      String old, String now, int lost, String said) throws IOException {
    Doubts.Rules rules = read(text().replaceFirst("\\Q" + old + "\\E", now));
    assertEquals(List.of(said), rules.faults().stream().map(Fault::toString).toList());
    assertEquals(SHIPPED - lost, rules.all().size());
  }

  /** As a file of another version may have one. */
  @Test
  void a_rule_that_nobody_knows_is_left_out_with_a_fault() throws IOException {
    Doubts.Rules rules = read(text().replace("\"rule\": \"lid open\"", "\"rule\": \"door open\""));
    assertEquals(1, rules.faults().size());
    String said = rules.faults().get(0).toString();
    assertEquals(
        "templates/doubts.json:97:rules[15].rule: found \"door open\", expected ",
        said.substring(0, said.indexOf("expected ") + 9));
    assertEquals(true, said.contains("lid open"));
    assertEquals(SHIPPED - 1, rules.all().size());
  }

  @Test
  void a_file_that_is_no_json_has_no_rules() {
    Doubts.Rules rules = read("{\"rules\": [");
    assertEquals(1, rules.faults().size());
    assertEquals(List.of(), rules.all());
  }
}
