package org.flitchbook.change;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.flitchbook.message.Message.say;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;

/**
 * The stretch of a log between the first and the last row that changed: how many rows, and these
 * two. A log has too many rows to print each, and the logs themselves are kept as evidence.
 */
final class LogChanges {

  private final byte[] bytes;
  private final int start;
  private final int end;

  private LogChanges(byte[] bytes, int start, int end) {
    this.bytes = bytes;
    this.start = start;
    this.end = end;
  }

  static List<Change> between(SourceFile before, SourceFile now) {
    byte[] old = before.bytes();
    byte[] current = now.bytes();
    int start = lineStart(old, Math.max(0, Arrays.mismatch(old, current)));
    int same = sameTail(old, current, start);
    LogChanges was = new LogChanges(old, start, old.length - same);
    LogChanges is = new LogChanges(current, start, current.length - same);
    Place place = Place.of(now.name(), was.number());
    return List.of(Change.of(place, place, was.shown(), is.shown()));
  }

  private static int lineStart(byte[] bytes, int from) {
    int start = from;
    while (start > 0 && bytes[start - 1] != '\n') {
      start--;
    }
    return start;
  }

  /** The bytes at the ends that are the same and begin with a line, in both behind the start. */
  private static int sameTail(byte[] old, byte[] now, int start) {
    int most = Math.min(old.length, now.length) - start;
    int same = 0;
    while (same < most && old[old.length - 1 - same] == now[now.length - 1 - same]) {
      same++;
    }
    while (same > 0 && !(begins(old, old.length - same) && begins(now, now.length - same))) {
      same--;
    }
    return same;
  }

  private static boolean begins(byte[] bytes, int at) {
    return at == 0 || bytes[at - 1] == '\n';
  }

  /** The physical line on which the stretch begins, from 1. */
  private int number() {
    return 1 + (int) IntStream.range(0, start).filter(at -> bytes[at] == '\n').count();
  }

  /** Without the zeros that stand between the letters of UTF-16. */
  private List<String> rows() {
    String text = new String(bytes, start, end - start, UTF_8);
    List<String> rows = List.of(text.split("\n", -1));
    int last = rows.size() - 1;
    return rows.stream()
        .limit(rows.get(last).isEmpty() ? last : rows.size())
        .map(row -> row.replace("\0", "").strip())
        .toList();
  }

  /** Empty where it has no row. */
  private Optional<Message> shown() {
    List<String> rows = rows();
    Optional<String> first = rows.stream().findFirst();
    return rows.size() < 2
        ? first.map(Message::of)
        : first.map(
            row ->
                say(
                    "change.rows",
                    "{0} rows, the first: {1}; the last: {2}",
                    rows.size(),
                    row,
                    rows.get(rows.size() - 1)));
  }
}
