package org.flitchbook.reading;

import java.util.List;

/** The readings of one probe that stand in several logs, or in several stretches of one. */
final class JoinedSamples implements Samples {

  /** No readings. */
  static final Samples NONE = new JoinedSamples(List.of());

  private final List<Samples> parts;
  private final int[] part;
  private final int[] indices;
  private int size;

  JoinedSamples(List<Samples> parts) {
    this.parts = List.copyOf(parts);
    int all = parts.stream().mapToInt(Samples::size).sum();
    this.part = new int[all];
    this.indices = new int[all];
  }

  void add(int from, int index) {
    part[size] = from;
    indices[size] = index;
    size++;
  }

  private Samples partOf(int index) {
    return parts.get(part[index]);
  }

  @Override
  public int size() {
    return size;
  }

  @Override
  public long at(int index) {
    return partOf(index).at(indices[index]);
  }

  @Override
  public long level(int index) {
    return partOf(index).level(indices[index]);
  }

  @Override
  public String file(int index) {
    return partOf(index).file(indices[index]);
  }

  @Override
  public int line(int index) {
    return partOf(index).line(indices[index]);
  }
}
