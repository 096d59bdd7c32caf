package org.flitchbook.record;

import java.util.List;
import org.flitchbook.reading.FileRead;

/**
 * The files that a record carries.
 *
 * @param left how many further files the book has up to that day, on which nothing in it rests
 */
public record Carried(List<FileRead> files, long left) {
  public Carried {
    files = List.copyOf(files);
  }
}
