package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Key;
import org.flitchbook.plan.Person.PersonKey;

/** The people of a plan, which can be read without the rest of it. */
record People(@Key(open = true) Fields plan, @Key(unique = "initials") List<Written> people) {

  /**
   * A person.
   *
   * @param key of the key that this person signs with
   * @param keys keys with their days: those that are retired
   */
  record Written(
      Fields object,
      String initials,
      String name,
      List<String> roles,
      @Key(format = "fingerprint") Optional<String> key,
      @Key(optional = true) List<Dated> keys) {}

  record Dated(Fields object, @Key(inline = true) PersonKey key) {}

  /** Each with the keys; one that somebody has already is a fault. */
  List<Person> all() {
    Map<String, String> holders = new HashMap<>();
    List<Person> all = new ArrayList<>();
    for (Written each : people) {
      List<PersonKey> keys = new ArrayList<>();
      each.key()
          .map(print -> new PersonKey(print, Optional.empty(), Optional.empty()))
          .ifPresent(keys::add);
      each.key().ifPresent(print -> own(each.object(), "key", print, each.initials(), holders));
      for (Dated dated : each.keys()) {
        keys.add(dated.key());
        own(dated.object(), "fingerprint", dated.key().fingerprint(), each.initials(), holders);
      }
      all.add(new Person(each.initials(), each.name(), each.roles(), keys));
    }
    return all;
  }

  private static void own(
      Fields object, String key, String print, String initials, Map<String, String> holders) {
    String holder = holders.putIfAbsent(print, initials);
    if (holder != null && !print.isEmpty()) {
      object.fault(
          key,
          say("plan.key-of-another", "a key that {0} has already", holder),
          say("json.once", "each once"));
    }
  }
}
