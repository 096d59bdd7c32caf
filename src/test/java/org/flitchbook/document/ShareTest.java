package org.flitchbook.document;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ShareTest {
  private static Table table(int... weights) {
    List<Table.Column> columns =
        IntStream.of(weights).mapToObj(w -> Sheetful.column("head", Table.Align.LEFT, w)).toList();
    return new Table("", columns, List.of());
  }

  private static double[] of(double... widths) {
    return widths;
  }

  private static void shares(
      double[] expected, Table table, double room, double[] least, double[] natural) {
    double[] shares = table.share(room, least, natural);
    assertArrayEquals(expected, shares, 1e-6, () -> Arrays.toString(shares));
  }

  @Test
  void room_left_over_goes_by_weight() {
    shares(of(25, 10, 65), table(1, 0, 3), 100, of(5, 5, 5), of(10, 10, 20));
  }

  @Test
  void without_weight_nothing_is_widened() {
    shares(of(10, 20), table(0, 0), 100, of(5, 5), of(10, 20));
  }

  @Test
  void short_columns_stay_whole_and_long_ones_wrap() {
    shares(of(20, 20, 60), table(1, 1, 1), 100, of(5, 5, 10), of(20, 20, 300));
  }

  @Test
  void long_columns_share_by_weight() {
    shares(of(30, 70), table(1, 3), 100, of(10, 10), of(1000, 1000));
  }

  @Test
  void words_wider_than_the_room_shrink_alike() {
    shares(of(25, 75), table(1, 1), 100, of(100, 300), of(100, 300));
  }
}
