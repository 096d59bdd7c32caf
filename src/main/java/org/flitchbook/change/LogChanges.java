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

  private LogChanges() {}

  static List<Change> between(SourceFile before, SourceFile now) {
    byte[] old = before.bytes();
    byte[] current = now.bytes();
    int start = lineStart(old, Math.max(0, Arrays.mismatch(old, current)));
    int same = sameTail(old, current, start);
    long number = 1 + IntStream.range(0, start).filter(at -> old[at] == '\n').count();
    Place place = Place.of(now.name(), (int) number);
    return List.of(
        Change.of(
            place,
            place,
            shown(rows(old, start, old.length - same)),
            shown(rows(current, start, current.length - same))));
  }

  private static int lineStart(byte[] bytes, int from) {
    int start = from;
    while (!begins(bytes, start)) {
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

  /** Without the zeros that stand between the letters of UTF-16. */
  private static List<String> rows(byte[] bytes, int start, int end) {
    String text = new String(bytes, start, end - start, UTF_8);
    List<String> rows = List.of(text.split("\n", -1));
    int last = rows.size() - 1;
    return rows.stream()
        .limit(rows.get(last).isEmpty() ? last : rows.size())
        .map(row -> row.replace("\0", "").strip())
        .toList();
  }

  /** Empty where it has no row. */
  private static Optional<Message> shown(List<String> rows) {
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
