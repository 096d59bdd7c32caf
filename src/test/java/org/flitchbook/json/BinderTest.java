package org.flitchbook.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.flitchbook.message.Message.say;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Measurable;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class BinderTest {

  enum Grade {
    FINE,
    NOT_SO_FINE
  }

  enum Measure implements Measurable {
    HEAT,
    DAMP;

    @Override
    public Dimension dimension() {
      return this == HEAT ? Dimension.TEMPERATURE : Dimension.SHARE;
    }

    @Override
    public List<Unit> units() {
      return this == HEAT ? Measurable.super.units() : List.of(Unit.PERCENT);
    }
  }

  record Part(String name, @Key(dimension = Dimension.MASS) Quantity weight) {}

  record Edge(Measure of, @Key(inline = true) Bound bound) {}

  sealed interface Bound {}

  record AtMost(@Key(of = "of") Quantity atMost) implements Bound {}

  record AtLeast(@Key(of = "of") Quantity atLeast) implements Bound {}

  @Choice("kind")
  sealed interface Shape {}

  @Choice({"square", "cube"})
  record Square(String kind, @Key(dimension = Dimension.LENGTH) Quantity side) implements Shape {}

  @Choice("circle")
  record Circle(Optional<Integer> turns) implements Shape {}

  record Stretch(LocalDate from, LocalDate until) implements Checked {
    @Override
    public void check(Fields object) {
      if (until.isBefore(from)) {
        object.fault("until", say("t.before", "{0}", until), say("t.after", "a later day"));
      }
    }
  }

  record All(
      Place place,
      String text,
      @Key(name = "for") Duration time,
      LocalDate day,
      ZoneId zone,
      boolean yes,
      @Key(least = 2) int number,
      Grade grade,
      @Key(format = "mark", otherwise = ".") Character mark,
      Optional<String> perhaps,
      @Key(required = true) Optional<Part> part,
      @Key(unique = "name", least = 1) List<Part> parts,
      @Key(optional = true, dimension = Dimension.TIME) List<Quantity> times,
      Map<String, String> words,
      Shape shape,
      @Key(inline = true) Edge edge,
      Optional<Stretch> stretch,
      Node any) {}

  private static final Binder BINDER =
      Binder.PLAIN.with("mark", Format.choice(List.of('.', ','), String::valueOf));

  private static final String WHOLE =
      """
      {"text": "x", "for": "90 s", "day": "2026-02-24", "zone": "Asia/Kathmandu", "yes": true,
       "number": 7, "grade": "not so fine", "perhaps": "p",
       "part": {"name": "a", "weight": "1.5 kg"},
       "parts": [{"name": "a", "weight": "1 g"}, {"name": "b", "weight": "2 g"}],
       "times": ["1 h", "2 d"], "words": {"k": "v"},
       "shape": {"kind": "cube", "side": "2 cm"}, "of": "damp", "atLeast": "40 %",
       "stretch": {"from": "2026-01-01", "until": "2026-01-02"}, "any": [1]}
      """;

  private final List<Fault> faults = new ArrayList<>();

  private Fields fields(String text) {
    return Fields.of(Json.read("f", text.getBytes(UTF_8)).object().orElseThrow(), faults);
  }

  private List<String> said() {
    return faults.stream().map(Fault::toString).toList();
  }

  @Test
  void each_component_is_made_of_the_member_of_its_name() {
    All all = BINDER.bind(fields(WHOLE), All.class).orElseThrow();
    assertEquals(List.of(), said());
    assertEquals(Place.of("f", 1), all.place());
    assertEquals("x", all.text());
    assertEquals(Duration.ofSeconds(90), all.time());
    assertEquals(LocalDate.of(2026, 2, 24), all.day());
    assertEquals(ZoneId.of("Asia/Kathmandu"), all.zone());
    assertTrue(all.yes());
    assertEquals(7, all.number());
    assertEquals(Grade.NOT_SO_FINE, all.grade());
    assertEquals('.', all.mark());
    assertEquals(Optional.of("p"), all.perhaps());
    assertEquals(Optional.of(new Part("a", Quantity.required("1.5 kg"))), all.part());
    assertEquals(2, all.parts().size());
    assertEquals(List.of(Quantity.required("1 h"), Quantity.required("2 d")), all.times());
    assertEquals(Map.of("k", "v"), all.words());
    assertEquals(new Square("cube", Quantity.required("2 cm")), all.shape());
    assertEquals(new Edge(Measure.DAMP, new AtLeast(Quantity.required("40 %"))), all.edge());
    assertEquals("a list", all.any().shown());
  }

  @ParameterizedTest(name = "{0} for {1}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      textBlock =
          """
          "text": "x",          |                      | f:1:text: found no "text", expected a text there
          "text": "x"           | "text": 7            | f:1:text: found 7, expected a text
          "for": "90 s"         | "for": "90 g"        | f:1:for: found "90 g", expected a length of time in s, min, h or d
          "for": "90 s"         | "for": "0.0001 s"    | f:1:for: found "0.0001 s", expected a length of time in s, min, h or d
          "day": "2026-02-24"   | "day": "24 Feb"      | f:1:day: found "24 Feb", expected a date such as 2026-01-05
          "zone": "Asia/Kathmandu" | "zone": "Nowhere" | f:1:zone: found "Nowhere", expected a zone such as America/New_York
          "yes": true           | "yes": "true"        | f:1:yes: found "true", expected true or false
          "yes": true,          |                      | f:1:yes: found no "yes", expected true or false there
          "number": 7           | "number": 7.5        | f:2:number: found 7.5, expected a whole number
          "number": 7           | "number": 1          | f:2:number: found 1, expected 2 or more
          "number": 7,          |                      | f:1:number: found no "number", expected a whole number there
          "grade": "not so fine" | "grade": "so so"    | f:2:grade: found "so so", expected fine or not so fine
          "number": 7,          | "number": 7, "mark": ";", | f:2:mark: found ";", expected . or ,
          "perhaps": "p"        | "perhaps": null      | f:2:perhaps: found null, expected a text
          "part": {"name": "a", "weight": "1.5 kg"}, |  | f:1:part: found no "part", expected an object there
          "part": {             | "part": {"extra": 1, | f:3:part.extra: found the key "extra", expected one of name, weight
          "weight": "1.5 kg"    | "weight": "-1 kg"    | f:3:part.weight: found "-1 kg", expected a mass in g, kg, oz or lb
          [{"name": "a", "weight": "1 g"}, {"name": "b", "weight": "2 g"}] | [] | f:4:parts: found a list of 0, expected 1 or more of name, weight
          [{"name": "a", "weight": "1 g"}, {"name": "b", "weight": "2 g"}] | {} | f:4:parts: found an object, expected a list
          {"name": "b"          | {"name": "a"         | f:4:parts[1].name: found "a" twice, expected each once
          {"name": "b"          | {"name": " "         | f:4:parts[1].name: found " ", expected at least one letter
          "2 d"                 | "2 kg"               | f:5:times[1]: found "2 kg", expected a length of time in s, min, h or d
          {"k": "v"}            | {"k": 1}             | f:5:words.k: found 1, expected a text
          "kind": "cube"        | "kind": "cone"       | f:6:shape.kind: found "cone", expected square, cube or circle
          "kind": "cube",       |                      | f:6:shape.kind: found no "kind", expected square, cube or circle there
          "side": "2 cm"        | "turns": 3           | f:6:shape.side: found no "side", expected a length in mm, cm, in, m or ft there && f:6:shape.turns: found the key "turns", expected one of kind, side
          "atLeast": "40 %"     | "atLeast": "40 ppm"  | f:6:atLeast: found "40 ppm", expected a share in %
          "atLeast": "40 %"     | "atLeast": 40        | f:6:atLeast: found 40, expected a share in %
          "atLeast": "40 %",    |                      | f:1:atMost: found no "atMost", expected a share in % there
          "atLeast": "40 %"     | "atLeast": "40 %", "atMost": "50 %" | f:6:atLeast: found "atMost" and "atLeast", expected one of them
          "of": "damp"          | "of": "cold"         | f:6:of: found "cold", expected heat or damp
          "until": "2026-01-02" | "until": "2025-01-02" | f:7:stretch.until: found 2025-01-02, expected a later day
          , "any": [1]          |                      | f:1:any: found no "any", expected a value there
          """)
  void what_does_not_fit_is_a_fault(String found, String changed, String expected) {
    int at = WHOLE.indexOf(found);
    assertTrue(at >= 0, found);
    String text =
        WHOLE.substring(0, at)
            + (changed == null ? "" : changed)
            + WHOLE.substring(at + found.length());
    BINDER.bind(fields(text), All.class);
    assertEquals(List.of(expected.split(" && ", -1)), said());
  }

  @Test
  void every_fault_is_found_in_one_reading() {
    assertTrue(BINDER.bind(fields("{\"shape\": {}, \"x\": 1}"), All.class).isEmpty());
    assertEquals(14, said().size(), said().toString());
  }

  @Test
  void a_record_is_made_as_far_as_it_can_be() {
    record Head(String name, @Key(required = true) Optional<Part> part, List<Part> parts) {}
    Optional<Head> head = BINDER.bind(fields("{\"parts\": [{}, 1]}"), Head.class);
    assertEquals(Optional.of(new Head("", Optional.empty(), List.of())), head);
    assertEquals(5, faults.size());
  }

  @Test
  void a_record_that_takes_the_object_itself_may_ask_it_for_more() {
    record Open(@Key(open = true) Fields object, String name) {}
    Open open = BINDER.bind(fields("{\"name\": \"a\", \"more\": \"b\"}"), Open.class).orElseThrow();
    assertEquals(Optional.of("b"), open.object().object().text("more"));
    assertTrue(open.object().has("more"));
    open.object().end();
    assertEquals(List.of(), said());
  }

  @Test
  void a_record_is_changed_where_an_object_says_otherwise() {
    Edge edge = new Edge(Measure.DAMP, new AtLeast(Quantity.required("40 %")));
    Fields object = fields("{\"of\": \"heat\", \"atLeast\": \"50 %\", \"atMost\": \"1 %\"}");
    Edge changed = BINDER.change(edge, Edge.class, object, Set.of("atLeast", "atMost"));
    assertEquals(new Edge(Measure.DAMP, new AtLeast(Quantity.required("50 %"))), changed);
    object.has("of");
    object.end();
    assertEquals(
        List.of("f:1:atMost: found the key \"atMost\", expected one of atLeast, of"), said());
  }

  @Test
  void a_type_that_nobody_can_read_is_an_error_of_the_program() {
    record Odd(StringBuilder text) {}
    record Marked(@Key(format = "none") String text) {}
    assertThrows(IllegalArgumentException.class, () -> BINDER.schema(Odd.class));
    assertThrows(IllegalArgumentException.class, () -> BINDER.schema(Marked.class));
  }

  @Test
  void the_keys_of_a_record_and_what_stands_under_each_can_be_asked_for() {
    Schema.Members all = (Schema.Members) BINDER.schema(All.class);
    Schema.Member time = all.members().get(2);
    assertEquals("for", time.key());
    assertTrue(time.required());
    assertEquals(
        "a length of time in s, min, h or d",
        ((Schema.Text) time.schema()).format().expected().toString());
    Schema.Text grade = (Schema.Text) all.members().get(7).schema();
    assertEquals(List.of("fine", "not so fine"), grade.format().choices());
    assertEquals(
        List.of("square", "cube", "circle"),
        List.copyOf(((Schema.ByWord) all.members().get(14).schema()).records().keySet()));
  }
}
