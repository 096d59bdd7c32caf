package org.flitchbook.ledger;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.format.DateTimeFormatter;
import java.util.SortedMap;
import java.util.TreeMap;
import org.flitchbook.input.SourceFile;

/**
 * One line of the chain.
 *
 * @param sequence the line's number, from 1
 * @param previous the hash of the line before; 64 zeros on the first
 * @param hash SHA-256 of the line's canonical form without this hash
 */
public record LedgerLine(long sequence, String previous, Event event, String hash) {

  static LedgerLine after(Head head, Event event) {
    long sequence = head.sequence() + 1;
    return new LedgerLine(sequence, head.hash(), event, hash(tree(sequence, head.hash(), event)));
  }

  /** The chain's head as long as this is its last line. */
  public Head head() {
    return new Head(sequence, hash);
  }

  /** The hash of a line's members, in which {@code hash} itself doesn't count. */
  static String hash(SortedMap<String, Object> members) {
    SortedMap<String, Object> others = new TreeMap<>(members);
    others.remove("hash");
    return SourceFile.of("", CanonicalJson.text(others).getBytes(UTF_8)).sha256();
  }

  SortedMap<String, Object> members() {
    SortedMap<String, Object> members = tree(sequence, previous, event);
    members.put("hash", hash);
    return members;
  }

  private static SortedMap<String, Object> tree(long sequence, String previous, Event event) {
    SortedMap<String, Object> tree = new TreeMap<>();
    tree.put("sequence", sequence);
    tree.put("previous", previous);
    tree.put("event", event.what());
    tree.put("at", DateTimeFormatter.ISO_INSTANT.format(event.at()));
    tree.put("tool", event.tool());
    tree.put("day", event.day().map(Object::toString).orElse(""));
    tree.put("revision", (long) event.revision());
    tree.put("about", event.about());
    tree.put("by", event.by());
    tree.put("reason", event.reason());
    tree.put("inputs", event.inputs());
    tree.put("outputs", event.outputs());
    tree.put("facts", event.facts());
    return tree;
  }
}
