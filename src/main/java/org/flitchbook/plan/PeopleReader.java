package org.flitchbook.plan;

import java.util.List;
import java.util.Optional;
import org.flitchbook.json.Fields;

/** Reads the people of a plan. */
final class PeopleReader {

  private final Fields plan;
  private final KeyReader keys = new KeyReader();

  PeopleReader(Fields plan) {
    this.plan = plan;
  }

  List<Person> read() {
    return Named.each(plan, "people", "initials", this::person, Person::initials);
  }

  private Optional<Person> person(Fields fields) {
    String initials = fields.text("initials");
    return Optional.of(
        new Person(
            initials,
            fields.text("name"),
            Lists.texts(fields, "roles"),
            keys.read(fields, initials)));
  }
}
