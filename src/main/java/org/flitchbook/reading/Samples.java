package org.flitchbook.reading;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.flitchbook.practice.Practice;

/**
 * The readings of one probe in the order of time: a view of the rows of its log, or of several.
 * They are held as plain numbers because a day of 1-second readings of eight probes has hundreds of
 * thousands. Two may have the same time.
 *
 * @param sources where the readings stand
 * @param source of each reading the index of its source, where there are several
 * @param rows of each reading its row there
 * @param silent the rows of a single source whose time the column holds, and that gave no reading
 */
public record Samples(List<Source> sources, Chosen source, Chosen rows, Chosen silent) {

  /** Of so many readings every one is looked at for what is usual, of more only as many. */
  private static final int MANY = 50_000;

  static final Samples NONE = new Samples(List.of());

  /**
   * One column of one log.
   *
   * @param correction added to each time, in milliseconds
   */
  record Source(ReadLog log, int column, long correction) {}

  Samples(List<Source> sources) {
    this(sources, new Chosen(), new Chosen(), new Chosen());
  }

  void add(int from, int row) {
    if (sources.size() > 1) {
      source.add(from);
    }
    rows.add(row);
  }

  void addSilent(int row) {
    silent.add(row);
  }

  /** When the log had a row that gave no reading; none of several logs together. */
  public LongStream silentAt() {
    return IntStream.range(0, silent.size())
        .mapToLong(i -> sources.get(0).log.at(silent.get(i)) + sources.get(0).correction);
  }

  int sourceOf(int index) {
    return sources.size() > 1 ? source.get(index) : 0;
  }

  private Source in(int index) {
    return sources.get(sourceOf(index));
  }

  public int size() {
    return rows.size();
  }

  /** Milliseconds since 1970-01-01T00:00Z, as written (the earliest time it can have been). */
  public long at(int index) {
    Source in = in(index);
    return in.log.at(rows.get(index)) + in.correction;
  }

  /** The index of the first reading at or after a time; their number where there is none. */
  public int firstAt(long time) {
    int low = 0;
    int high = size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      boolean isBefore = at(middle) < time;
      low = isBefore ? middle + 1 : low;
      high = isBefore ? high : middle;
    }
    return low;
  }

  /** See {@link org.flitchbook.measure.Level}. */
  public long level(int index) {
    Source in = in(index);
    return in.log.rows().level(in.column, rows.get(index));
  }

  /** The log's name within the book. */
  public String file(int index) {
    return in(index).log.name();
  }

  /** The physical line. */
  public int line(int index) {
    return in(index).log.rows().line(rows.get(index));
  }

  /**
   * The usual time between two readings in ms, which tells a gap: the median, without the steps
   * between two of one time; of few readings it is no longer than that so many of it are no gap.
   *
   * @return more than 0
   */
  public long interval(Practice.Gap gap) {
    long[] steps =
        IntStream.iterate(1, index -> index < size(), index -> index + 1 + size() / MANY)
            .mapToLong(i -> at(i) - at(i - 1))
            .filter(step -> step > 0)
            .sorted()
            .toArray();
    long few = gap.shortInterval();
    long median = steps.length == 0 ? few : steps[steps.length / 2];
    return size() < gap.fewReadings() ? Math.min(median, few) : median;
  }
}
