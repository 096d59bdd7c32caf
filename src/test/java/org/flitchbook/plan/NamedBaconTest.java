package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is sold as bacon takes the ceiling for bacon whatever the cut: 9 CFR 424.21(c) leaves bacon
 * out, and the 625, 200 and 156.25 ppm of other cured meat are not for it.
 */
final class NamedBaconTest {

  @ParameterizedTest(name = "{0} under {3}, support \"{4}\": {5}")
  @CsvSource({
    "Jowl bacon,  ham,   dry,        us.424.21-c.nitrite-dry,        '',       refused",
    "Jowl BACON,  ham,   dry,        us.424.21-c.nitrite-dry,        '',       refused",
    "Jowl bacon,  ham,   dry,        us.424.21-c.nitrite-dry,        a letter, read",
    "Cured jowl,  ham,   dry,        us.424.21-c.nitrite-dry,        '',       read",
    "Bacon bits,  belly, comminuted, us.424.21-c.nitrite-comminuted, '',       refused",
    "Pork bits,   belly, comminuted, us.424.21-c.nitrite-comminuted, '',       read",
    "Ham bacon,   ham,   pumped,     us.424.21-c.nitrate-pickle,     '',       refused",
    "Jowl bacon,  ham,   dry,        us.424.22-b-3.nitrite,          '',       read",
  })
  void a_product_named_bacon_is_under_the_limits_of_bacon(
      String name, String cut, String method, String limit, String support, String expected) {
    String entry = support.isEmpty() ? "" : ", \"support\": \"" + support + "\"";
    Draft draft =
        Draft.of("least.json")
            .with("Plain belly bacon", name)
            .with("\"cut\": \"belly\"", "\"cut\": \"" + cut + "\"")
            .with("\"cureMethod\": \"dry\"", "\"cureMethod\": \"" + method + "\"")
            .with("\"limits\": []", "\"limits\": [{\"limit\": \"" + limit + "\"" + entry + "}]");
    String said = "found " + limit + " on PLB, whose name says bacon";
    List<Boolean> told = draft.faults().stream().map(fault -> fault.contains(said)).toList();
    assertEquals(expected.equals("read") ? List.of() : List.of(true), told);
  }
}
