package org.flitchbook.ledger;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.json.Parsed;
import org.flitchbook.message.Message;

/** Reads one line and holds it to its form, to its own hash, and to the line before. */
final class LineReader {

  /** Years of four digits only. */
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd", Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);

  private static final Message TEXT = say("ledger.text", "a text");
  private static final Message OTHER_KIND = say("ledger.kind", "another kind of value");

  private final int number;
  private final Optional<String> previous;
  private final SortedMap<String, Object> tree = new TreeMap<>();
  private final List<Fault> faults = new ArrayList<>();

  /**
   * @param number the physical line, from 1
   * @param previous the hash that the line before states; empty where that one can't be read
   */
  LineReader(int number, Optional<String> previous) {
    this.number = number;
    this.previous = previous;
  }

  /** What is wrong with the line. */
  List<Fault> faults() {
    return faults;
  }

  /** The line; empty where it can't be read as one. */
  Optional<LedgerLine> read(byte[] bytes) {
    Parsed parsed = Json.read(Ledger.FILE, bytes);
    Optional<LedgerLine> line = parsed.object().flatMap(object -> read(bytes, object));
    Place place = Place.of(Ledger.FILE, number);
    Message expected = say("ledger.object", "a JSON object");
    faults.addAll(
        0,
        parsed.faults().stream().map(each -> Ledger.fault(place, each.found(), expected)).toList());
    return line;
  }

  private Optional<LedgerLine> read(byte[] bytes, Node.Obj object) {
    tree.putAll(members(object));
    Optional<LedgerLine> line = faults.isEmpty() ? line() : Optional.empty();
    line.ifPresent(read -> hold(bytes, read));
    return line;
  }

  /** In the kinds of value that the canonical form has. */
  private SortedMap<String, Object> members(Node.Obj object) {
    SortedMap<String, Object> members = new TreeMap<>();
    object.members().forEach((key, node) -> members.put(sound(key, key), value(node)));
    return members;
  }

  private Object value(Node node) {
    if (node instanceof Node.Text text) {
      return sound(node.place().column(), text.value());
    }
    if (node instanceof Node.Num whole && isWhole(whole.value())) {
      return whole.value().longValueExact();
    }
    if (node instanceof Node.Obj object) {
      return members(object);
    }
    fault(
        node.place().column(),
        Message.of(node.shown()),
        say("ledger.value", "a text, a whole number or an object"));
    return "";
  }

  private static boolean isWhole(BigDecimal value) {
    BigDecimal largest = BigDecimal.valueOf(CanonicalJson.LARGEST);
    return value.scale() == 0 && value.abs().compareTo(largest) <= 0;
  }

  /** JSON's escapes can spell half a letter, and one letter in two ways; the ledger has neither. */
  private String sound(String key, String text) {
    if (!UTF_8.newEncoder().canEncode(text)) {
      fault(key, say("ledger.half-letter", "half of a surrogate pair"), TEXT);
      return "";
    }
    if (!Event.composed(text).equals(text)) {
      fault(
          key,
          say("ledger.other-form", "text in another form"),
          say("ledger.normal-form", "Unicode's normalization form C"));
    }
    return text;
  }

  private Optional<LedgerLine> line() {
    long sequence = whole("sequence", CanonicalJson.LARGEST);
    String before = hash("previous");
    String hash = hash("hash");
    Optional<Event> event = event();
    return faults.isEmpty()
        ? event.map(read -> new LedgerLine(sequence, before, read, hash))
        : Optional.empty();
  }

  private Optional<Event> event() {
    String what = text("event");
    Message moment = say("ledger.time", "a time such as 2026-02-24T22:13:05Z");
    Optional<Instant> at = time("at", text("at"), Instant::parse, moment);
    Message date = say("ledger.date", "a date such as 2026-02-24, or \"\"");
    Optional<LocalDate> day =
        Optional.of(text("day"))
            .filter(text -> !text.isEmpty())
            .flatMap(text -> time("day", text, it -> LocalDate.parse(it, DATE), date));
    long revision = whole("revision", Integer.MAX_VALUE);
    String by = text("by");
    String reason = text("reason");
    String about = text("about");
    String tool = text("tool");
    SortedMap<String, String> inputs = texts("inputs");
    SortedMap<String, String> outputs = texts("outputs");
    SortedMap<String, String> facts = texts("facts");
    if (what.isBlank() || facts.containsKey("hash")) {
      fault("event", quoted(what), say("ledger.word", "a word, and no fact called hash"));
    }
    return at.filter(time -> faults.isEmpty())
        .map(
            time ->
                new Event(
                    what,
                    time,
                    tool,
                    day,
                    (int) revision,
                    about,
                    by,
                    reason,
                    inputs,
                    outputs,
                    facts));
  }

  private void hold(byte[] bytes, LedgerLine line) {
    if (!Arrays.equals(bytes, CanonicalJson.text(tree).getBytes(UTF_8))) {
      fault(
          "",
          say("ledger.spelling", "another spelling of the line"),
          say("ledger.canonical", "its canonical form (RFC 8785)"));
    }
    String hash = LedgerLine.hash(tree);
    if (!hash.equals(line.hash())) {
      fault(
          "hash",
          Message.of(line.hash()),
          say("ledger.hash", "{0}, the SHA-256 of what the line says", hash));
    }
    if (line.sequence() != number) {
      fault("sequence", Message.of(line.sequence()), Message.of(number));
    }
    previous
        .filter(before -> !before.equals(line.previous()))
        .ifPresent(
            before ->
                fault(
                    "previous",
                    Message.of(line.previous()),
                    say("ledger.previous", "{0}, the line before's hash", before)));
  }

  private String text(String key) {
    return wanted(key, String.class, TEXT).orElse("");
  }

  private String hash(String key) {
    String text = text(key);
    if (!Head.isHash(text)) {
      fault(key, quoted(text), say("ledger.digits", "64 lower-case hexadecimal digits"));
    }
    return text;
  }

  private long whole(String key, long largest) {
    long whole = wanted(key, Long.class, say("ledger.whole", "a whole number")).orElse(0L);
    if (whole < 0 || whole > largest) {
      Message expected = say("ledger.range", "a whole number from 0 to {0}", largest);
      fault(key, Message.of(whole), expected);
      return 0;
    }
    return whole;
  }

  private SortedMap<String, String> texts(String key) {
    SortedMap<String, String> texts = new TreeMap<>();
    Map<?, ?> object = wanted(key, Map.class, say("ledger.map", "an object")).orElse(Map.of());
    object.forEach(
        (word, value) -> {
          if (value instanceof String text) {
            texts.put(String.valueOf(word), text);
          } else {
            fault(key + "." + word, OTHER_KIND, TEXT);
          }
        });
    return texts;
  }

  private <T> Optional<T> wanted(String key, Class<T> kind, Message expected) {
    Object value = tree.get(key);
    if (!kind.isInstance(value)) {
      fault(key, value == null ? say("ledger.nothing", "nothing") : OTHER_KIND, expected);
      return Optional.empty();
    }
    return Optional.of(kind.cast(value));
  }

  private <T> Optional<T> time(
      String key, String text, Function<String, T> parse, Message expected) {
    try {
      return Optional.of(parse.apply(text));
    } catch (DateTimeException noTime) {
      fault(key, quoted(text), expected);
      return Optional.empty();
    }
  }

  private static Message quoted(String text) {
    return Message.of("\"" + text + "\"");
  }

  private void fault(String key, Message found, Message expected) {
    faults.add(Ledger.fault(new Place(Ledger.FILE, number, key), found, expected));
  }
}
