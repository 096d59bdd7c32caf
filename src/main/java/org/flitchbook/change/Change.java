package org.flitchbook.change;

import java.util.Locale;
import org.flitchbook.input.Place;

/**
 * One thing that changed: a row of a sheet, a key of a JSON file, a stretch of a log, or a file.
 *
 * @param before where it stood; where it is new, the file alone
 * @param now where it stands; where it is gone, the file alone
 * @param old what stood there; empty where it is new
 * @param text what stands there; empty where it is gone
 */
public record Change(What what, Place before, Place now, String old, String text) {

  /** What was done to it. */
  public enum What {
    ADDED,
    REMOVED,
    CHANGED;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  static Change added(Place now, String text) {
    return new Change(What.ADDED, Place.of(now.file()), now, "", text);
  }

  static Change removed(Place before, String old) {
    return new Change(What.REMOVED, before, Place.of(before.file()), old, "");
  }

  static Change changed(Place before, Place now, String old, String text) {
    return new Change(What.CHANGED, before, now, old, text);
  }

  /** Where to look: the place that is there now, else the one that was. */
  public Place place() {
    return what == What.REMOVED ? before : now;
  }

  /** Whether it stands on another line than before. */
  public boolean hasMoved() {
    return what == What.CHANGED && before.line() != now.line();
  }

  /** {@code 2026-02-24/chill.csv:3:value: changed from … to …}. */
  @Override
  public String toString() {
    return switch (what) {
      case ADDED -> now + ": added: " + text;
      case REMOVED -> before + ": removed: " + old;
      case CHANGED ->
          now
              + (hasMoved() ? " (was line " + before.line() + ")" : "")
              + ": changed from: "
              + old
              + "; to: "
              + text;
    };
  }
}
