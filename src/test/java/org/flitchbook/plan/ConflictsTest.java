package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.flitchbook.message.Message;
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
        .conflicts()
        .stream()
        .map(Message::toString)
        .toList();
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

  /** A condition asks for as much as a floor does: 9 CFR 424.22(b) beside a cured cooling. */
  @ParameterizedTest(name = "{0} at most {1}: {2}")
  @CsvSource({
    "nitrite,     101 ppm,   ''",
    "nitrite,     100 ppm,   only exactly 100 ppm meets both",
    "nitrite,     99.99 ppm, both can't be met",
    "accelerator, 250 ppm,   only exactly 250 ppm meets both",
    "accelerator, 249 ppm,   both can't be met",
  })
  void a_ceiling_beside_what_a_cooling_asks_for(String of, String most, String told) {
    String ceiling =
        FLOOR
            .formatted(most)
            .replace("own.floor", "own.ceiling")
            .replace("\"floor\"", "\"ceiling\"")
            .replace("atLeast", "atMost")
            .replace("ingoing nitrite", "ingoing " + of);
    List<String> conflicts =
        Draft.of("least.json")
            .with(
                "\"limits\": []",
                "\"limits\": [{\"limit\": \"us.b21.cooling-3\", \"support\": \"file 1\"}],"
                    + " \"ownLimits\": ["
                    + ceiling
                    + "]")
            .plan()
            .products()
            .get(0)
            .conflicts()
            .stream()
            .map(Message::toString)
            .toList();
    String least = of.equals("nitrite") ? "100 ppm" : "250 ppm";
    String said = "us.b21.cooling-3 asks for at least %s, own.ceiling allows at most %s: %s";
    assertEquals(
        told.isEmpty() ? List.of() : List.of(said.formatted(least, most, told)), conflicts);
  }
}
