package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Limits of one product that can't, or can only just, be met together are told. */
final class ConflictsTest {

  private static final String FLOOR =
      "{\"id\": \"own.floor\", \"covers\": \"nitrite floor\", \"step\": \"cure\", \"rank\":"
          + " \"critical\", \"kind\": \"floor\", \"quantity\": \"ingoing nitrite\", \"atLeast\":"
          + " \"%s\", \"because\": \"a test\", \"support\": \"a test\"}";

  private static List<String> conflicts(String least) {
    return Draft.of("least.json")
        .with(
            "\"limits\": []",
            "\"limits\": [{\"limit\": \"us.424.22-b-3.nitrite\"}], \"ownLimits\": ["
                + FLOOR.formatted(least)
                + "]")
        .plan()
        .products()
        .get(0)
        .conflicts();
  }

  @ParameterizedTest(name = "at least {0}: {1}")
  @CsvSource({
    "199 ppm, ''",
    "200 ppm, only exactly 200 ppm meets both",
    "200.01 ppm, both can't be met"
  })
  void a_floor_beside_the_ceiling_of_200_ppm(String least, String told) {
    String said = "own.floor asks for at least " + least + ", us.424.22-b-3.nitrite allows at most";
    assertEquals(
        told.isEmpty() ? List.of() : List.of(said + " 200 ppm: " + told), conflicts(least));
  }
}
