package org.flitchbook.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The figures of the page of the collection are those that somebody reads out of its logs. */
final class ShapesTest {

  private static final int LEAST = 60;

  @Test
  void every_file_is_described_and_where_its_shape_was_seen() throws IOException {
    List<String> described =
        Shape.rows("| log | shape | where it was seen |").map(row -> row.get(0)).toList();
    assertEquals(Shape.files(), described.stream().sorted().toList());
    assertEquals(
        new HashSet<>(described), Shape.all().stream().map(Shape::log).collect(Collectors.toSet()));
    assertTrue(described.size() >= LEAST);
  }

  @TestFactory
  Stream<DynamicTest> a_log_read_by_hand_has_the_figures_of_its_page() {
    return Shape.all().stream()
        .filter(shape -> !shape.isRefused())
        .map(
            shape ->
                DynamicTest.dynamicTest(
                    shape.log(), () -> assertEquals(shape.figures(), ByHand.of(shape).figures())));
  }
}
