package org.flitchbook.reading;

/**
 * A column of a log, cut to what counts: a view of its rows.
 *
 * @param chosen the rows in the order of time
 * @param correction added to each time, in milliseconds
 */
record LoggedSamples(String file, LogRows rows, int column, Chosen chosen, long correction)
    implements Samples {

  @Override
  public int size() {
    return chosen.size();
  }

  @Override
  public long at(int index) {
    return rows.at(chosen.get(index)) + correction;
  }

  @Override
  public long level(int index) {
    return rows.level(column, chosen.get(index));
  }

  @Override
  public String file(int index) {
    return file;
  }

  @Override
  public int line(int index) {
    return rows.line(chosen.get(index));
  }
}
