package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

final class RefusalTest {

  /**
   * In the example plan or a template one text is changed; nothing but what stands here is said.
   */
  @ParameterizedTest(name = "{0}")
  @CsvFileSource(
      resources = "/org/flitchbook/plan/refusals.csv",
      delimiter = '|',
      numLinesToSkip = 1,
      quoteCharacter = '~',
      maxCharsPerColumn = 10_000)
  void a_plan_is_refused_with(
      String fact, String file, String found, String changed, String diagnostic) {
    Draft draft = Draft.example().with(file(file), found, changed == null ? "" : changed);
    assertEquals(List.of(diagnostic.split(" && ", -1)), draft.faults());
  }

  private static String file(String name) {
    return name.equals(Draft.PLAN) ? name : "templates/" + name;
  }
}
