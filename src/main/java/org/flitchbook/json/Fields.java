package org.flitchbook.json;

import static org.flitchbook.message.Message.say;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;

/**
 * An object while a record is bound to it, and for the faults that its user finds later.
 *
 * @param asked the keys asked for so far
 * @param faults where the faults go, shared by all objects of one document
 */
public record Fields(Node.Obj object, Set<String> asked, List<Fault> faults) {

  private static final int SHOWN_KEYS = 40;

  public static Fields of(Node.Obj object, List<Fault> faults) {
    return new Fields(object, new LinkedHashSet<>(), faults);
  }

  public Place place() {
    return object.place();
  }

  /** Where that key stands, or the object itself where the key is missing. */
  public Place place(String key) {
    Node node = object.members().get(key);
    return node == null ? inside(key) : node.place();
  }

  /** The value under a key, which is known from then on. */
  Optional<Node> member(String key) {
    asked.add(key);
    return Optional.ofNullable(object.members().get(key));
  }

  public boolean has(String key) {
    return member(key).isPresent();
  }

  /** To be called when all keys were asked for: every other one is a fault. */
  public void end() {
    List<String> known = asked.stream().limit(SHOWN_KEYS).toList();
    object
        .members()
        .forEach(
            (key, node) -> {
              if (!asked.contains(key)) {
                Message found = say("json.key", "the key \"{0}\"", key);
                Message expected = say("json.one-of", "one of {0}", Listing.commas(known));
                faults.add(Fault.broken("unknown key", node.place(), found, expected));
              }
            });
  }

  public void fault(String key, Message found, Message expected) {
    faults.add(Fault.broken("wrong value", place(key), found, expected));
  }

  /** Whether nothing was found to be wrong in it so far. */
  public boolean isSound() {
    return faults.stream()
        .map(Fault::place)
        .filter(each -> each.file().equals(place().file()))
        .noneMatch(each -> each.column().startsWith(place().column() + "."));
  }

  /** A key that is not there and must be. */
  void missing(String key, Message expected) {
    Message found = say("json.no-key", "no \"{0}\"", key);
    Message wanted = say("json.there", "{0} there", expected);
    faults.add(Fault.broken("missing key", inside(key), found, wanted));
  }

  /** A value that is not what was expected. */
  void refuse(Node node, Message expected) {
    fault(node, node.found(), expected);
  }

  void fault(Node node, Message found, Message expected) {
    faults.add(Fault.broken("wrong value", node.place(), found, expected));
  }

  private Place inside(String key) {
    String path = object.place().column();
    return object.place().column(path.isEmpty() ? key : path + "." + key);
  }
}
