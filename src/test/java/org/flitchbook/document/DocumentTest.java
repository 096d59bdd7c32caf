package org.flitchbook.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.document.Block.Signatures;
import org.flitchbook.document.Block.Sum;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class DocumentTest {
  private static final Table.Cell EMPTY = new Table.Cell(Text.of(""), Tone.PLAIN);

  @ParameterizedTest(name = "{0}")
  @MethodSource
  void a_value_that_cannot_be_printed_is_refused_by_name(String named, Executable making) {
    String message = assertThrows(IllegalArgumentException.class, making).toString();
    assertTrue(message.contains(named), message);
  }

  static Stream<Arguments> a_value_that_cannot_be_printed_is_refused_by_name() {
    return Stream.of(
        refused("document is empty: []", () -> Sheetful.of()),
        refused("heading level is 4", () -> new Block.Heading(4, "Cure")),
        refused("heading is blank: \" \"", () -> new Block.Heading(1, " ")),
        refused("caution is blank", () -> new Block.Caution("")),
        refused("columns of facts is 0", () -> new Facts(0, List.of(fact()))),
        refused("facts is empty", () -> new Facts(2, List.of())),
        refused("table head is empty", () -> new Table("", List.of(), List.of())),
        refused("column head is blank", () -> Sheetful.column("", Table.Align.LEFT, 1)),
        refused("column weight is -1", () -> Sheetful.column("Lot", Table.Align.LEFT, -1)),
        refused("row 2 has 1 cells for 2 columns", DocumentTest::raggedTable),
        refused("lines of a sum is empty", () -> new Sum(List.of())),
        refused("axis minimum 5.0 is not below maximum 5.0", () -> Sheetful.axis(5, 5)),
        refused("axis minimum is not a finite number: NaN", () -> Sheetful.axis(Double.NaN, 5)),
        refused(
            "tick \"60\" is 60.0",
            () -> new Chart.Axis("", 0, 50, List.of(new Chart.Tick(60, "60", "")))),
        refused(
            "goes back from x = 2.0 to 1.0",
            () -> curve(new Chart.Point(2, 0), new Chart.Point(1, 0))),
        refused("stretch of curve \"P1\" is empty", () -> curve()),
        refused("y of a point is not a finite number: Infinity", () -> new Chart.Point(0, 1 / 0.0)),
        refused("limit line \"130 °F\" is 130.0", () -> guided(new Chart.Guide("130 °F", 130))),
        refused("x of marker \"out\" is 11.0", () -> marked(new Chart.Marker(11, 5, "out"))),
        refused("begins at 4.0, after its end at 3.0", () -> new Chart.Band(4, 3, "gap")),
        refused("begin of band \"gap\" is 11.0", () -> banded(new Chart.Band(11, 12, "gap"))),
        refused(
            "field stands twice: maker", () -> new Signatures(List.of(box("maker"), box("maker")))),
        refused("mark of a scale is 1.5", () -> new Table.Scale(1.5)),
        refused("scale in words is blank", () -> Table.Cell.of(new Table.Scale(0), "")),
        refused("note is blank", () -> new Block.Note(Text.of(" "))),
        refused("label of a blank is blank", () -> new Block.Blank("", 1, List.of())),
        refused("lines of a blank is 0", () -> new Block.Blank("Cause", 0, List.of())),
        refused("slot of a blank is blank", () -> new Block.Blank("Cause", 1, List.of(""))),
        refused("full stop: a.b", () -> box("a.b")),
        refused("text width is 39", () -> Sheetful.of(new Block.PageBreak()).toText(39)));
  }

  private static Arguments refused(String named, Executable making) {
    return arguments(named, making);
  }

  private static Facts.Fact fact() {
    return new Facts.Fact("Lot", Text.of("26047-B1"));
  }

  private static Signatures.Box box(String field) {
    return new Signatures.Box(field, "Prepared by", "", "");
  }

  private static Table raggedTable() {
    List<Table.Column> columns =
        List.of(
            Sheetful.column("Lot", Table.Align.LEFT, 1),
            Sheetful.column("Weight", Table.Align.RIGHT, 1));
    return new Table("", columns, List.of(Sheetful.row("a", "1"), Sheetful.row("b")));
  }

  private static Chart.Curve curve(Chart.Point... points) {
    return new Chart.Curve("P1", Chart.Stroke.SOLID, List.of(List.of(points)));
  }

  private static Chart guided(Chart.Guide guide) {
    return Sheetful.chart(List.of(guide), List.of(), List.of());
  }

  private static Chart marked(Chart.Marker marker) {
    return Sheetful.chart(
        List.of(), List.of(new Chart.Marks("", Chart.Shape.DOT, List.of(marker))), List.of());
  }

  private static Chart banded(Chart.Band band) {
    return Sheetful.chart(List.of(), List.of(), List.of(band));
  }

  @Test
  void a_limit_line_on_the_edge_of_the_axis_is_within() {
    assertEquals(
        2,
        Sheetful.chart(
                List.of(new Chart.Guide("top", 100), new Chart.Guide("foot", 0)),
                List.of(),
                List.of())
            .guides()
            .size());
  }

  @Test
  void a_band_may_begin_before_the_axis_and_end_after_it() {
    assertEquals(1, banded(new Chart.Band(-5, 50, "chill")).bands().size());
  }

  @Test
  void a_list_changed_later_does_not_change_the_document() {
    List<Table.Cell> cells = new ArrayList<>(List.of(EMPTY));
    Table.Row row = new Table.Row(cells);
    cells.add(EMPTY);
    assertEquals(1, row.cells().size());
  }

  @Test
  void paper_is_parsed_in_any_case() {
    assertEquals(Optional.of(Document.Paper.LETTER), Document.Paper.parse("letter"));
    assertEquals(Optional.of(Document.Paper.A4), Document.Paper.parse(" a4 "));
    assertEquals(Optional.empty(), Document.Paper.parse("A5"));
  }

  @Test
  void printable_text_is_composed_and_has_no_controls() {
    assertEquals("caf\u00e9 x\ny", Text.printable("cafe\u0301\tx\n\u0007y\u202e\u00ad"));
  }
}
