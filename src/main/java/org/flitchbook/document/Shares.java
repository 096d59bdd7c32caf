package org.flitchbook.document;

import java.util.Arrays;
import java.util.List;

/** Divides room among columns by weight and content. */
final class Shares {
  /** A column is short up to this part of an equal share of the room. */
  private static final double SHORT = 1.25;

  private final double[] weights;
  private final double[] least;
  private final double[] natural;

  private Shares(List<Table.Column> columns, double[] least, double[] natural) {
    this.weights = columns.stream().mapToDouble(Table.Column::weight).toArray();
    this.least = least;
    this.natural = natural;
  }

  /** The widths of columns; {@link Table#share} says how they are found. */
  static double[] of(List<Table.Column> columns, double room, double[] least, double[] natural) {
    Shares shares = new Shares(columns, least, natural);
    double wanted = Arrays.stream(natural).sum();
    double needed = Arrays.stream(least).sum();
    if (wanted <= room) {
      return shares.withSlack(room - wanted);
    }
    return needed >= room
        ? Arrays.stream(least).map(width -> width * room / needed).toArray()
        : shares.filled(room);
  }

  private double[] withSlack(double slack) {
    double[] widths = natural.clone();
    double weight = Arrays.stream(weights).sum();
    for (int i = 0; i < widths.length && weight > 0; i++) {
      widths[i] += slack * weights[i] / weight;
    }
    return widths;
  }

  /**
   * Short columns stay whole, such as those of numbers, if that leaves the long ones their longest
   * word; so do columns of no weight.
   */
  private double[] filled(double room) {
    double shortest = SHORT * room / natural.length;
    double[] widths = least.clone();
    Arrays.setAll(widths, i -> weights[i] == 0 || natural[i] <= shortest ? natural[i] : least[i]);
    if (Arrays.stream(widths).sum() > room) {
      widths = least.clone();
    }
    double left = room - Arrays.stream(widths).sum();
    for (int round = 0; round < widths.length && left > room * 1e-9; round++) {
      left -= give(widths, left);
    }
    return widths;
  }

  /** Hands out what is left, no column more than it lacks, and returns what was taken. */
  private double give(double[] widths, double left) {
    double claims = 0;
    for (int i = 0; i < widths.length; i++) {
      claims += claim(i, widths[i]);
    }
    double taken = 0;
    for (int i = 0; i < widths.length && claims > 0; i++) {
      double part = Math.min(natural[i] - widths[i], left * claim(i, widths[i]) / claims);
      widths[i] += part;
      taken += part;
    }
    return taken;
  }

  private double claim(int column, double width) {
    return Math.max(weights[column], 0.25) * Math.max(0, natural[column] - width);
  }
}
