package org.flitchbook.ledger;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.json.Node;
import org.flitchbook.message.Message;

/** The members of one line, in the kinds of value that the canonical form has. */
final class LineMembers {

  private static final Message TEXT = say("ledger.text", "a text");
  private static final Message OTHER_KIND = say("ledger.kind", "another kind of value");

  private final int line;
  private final List<Fault> faults = new ArrayList<>();
  private final SortedMap<String, Object> tree;

  /**
   * @param line the physical line, from 1
   */
  LineMembers(int line, Node.Obj object) {
    this.line = line;
    this.tree = members(object);
  }

  SortedMap<String, Object> tree() {
    return tree;
  }

  /** What was found wrong so far. */
  List<Fault> faults() {
    return faults;
  }

  private SortedMap<String, Object> members(Node.Obj object) {
    SortedMap<String, Object> members = new TreeMap<>();
    object.members().forEach((key, node) -> members.put(sound(key, key), value(node)));
    return members;
  }

  private Object value(Node node) {
    if (node instanceof Node.Text text) {
      return sound(node.place().column(), text.value());
    }
    if (node instanceof Node.Num number && isWhole(number.value())) {
      return number.value().longValueExact();
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
    if (!StandardCharsets.UTF_8.newEncoder().canEncode(text)) {
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

  String text(String key) {
    return wanted(key, String.class, TEXT).orElse("");
  }

  String hash(String key) {
    String text = text(key);
    if (!Head.isHash(text)) {
      Message expected = say("ledger.digits", "64 lower-case hexadecimal digits");
      fault(key, LineReader.quoted(text), expected);
    }
    return text;
  }

  long whole(String key, long largest) {
    long number = wanted(key, Long.class, say("ledger.whole", "a whole number")).orElse(0L);
    if (number < 0 || number > largest) {
      Message expected = say("ledger.range", "a whole number from 0 to {0}", largest);
      fault(key, Message.of(number), expected);
      return 0;
    }
    return number;
  }

  SortedMap<String, String> texts(String key) {
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

  void fault(String key, Message found, Message expected) {
    faults.add(Ledger.fault(new Place(Ledger.FILE, line, key), found, expected));
  }
}
