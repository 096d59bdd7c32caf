package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.time.LocalDate;
import java.time.Period;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Checked;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Person.PersonKey;
import org.flitchbook.practice.Practice;
import org.flitchbook.words.Words;

/** {@code plan.json} as it is written. */
record PlanFile(
    Fields object,
    @Key(least = 1, most = 1) int flitchbook,
    @Key(required = true) Optional<House> establishment,
    @Key(name = "plan", required = true) Optional<Head> head,
    @Key(least = 1) List<String> ruleSets,
    @Key(inline = true) People people,
    @Key(unique = "id") List<Device> instruments,
    @Key(unique = "id") List<Location> places,
    @Key(unique = "lot") List<Labelled> ingredients,
    @Key(unique = "code") List<ProductFile> products) {

  /** What was read for it; what is wrong with that goes to the faults of the plan. */
  <T> Optional<T> with(Binder.Bound<T> read) {
    object.faults().addAll(read.faults());
    return read.value();
  }

  record House(
      Fields object,
      @Key(inline = true) Establishment establishment,
      @Key(otherwise = Words.DEFAULT) String language) {}

  /**
   * The plan as a document.
   *
   * @param retention how long records are kept, from the day of the last shipment
   */
  record Head(
      Fields object,
      String version,
      LocalDate signed,
      String signedBy,
      LocalDate reassessBy,
      Optional<Period> retention,
      @Key(optional = true) List<Confirmation> confirms) {}

  /**
   * A limit whose doubt is settled.
   *
   * @param support what the confirmation rests on
   */
  record Confirmation(Fields object, String limit, @Key(format = "support") String support) {}

  /** What a plan asks to be signed, which can be read without the rest of it. */
  record Asked(@Key(open = true) Fields plan, OfHouse establishment) {

    record OfHouse(
        @Key(open = true) Fields house,
        @Key(optional = true, format = "role") List<String> signatures) {}
  }

  /** The people of a plan, which can be read without the rest of it. */
  record People(@Key(open = true) Fields plan, @Key(unique = "initials") List<Written> people) {

    /** Each with the keys; one that somebody has already is a fault. */
    List<Person> all() {
      Map<String, String> holders = new HashMap<>();
      return people.stream().map(each -> each.person(holders)).toList();
    }
  }

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
      @Key(optional = true) List<Dated> keys) {

    private Person person(Map<String, String> holders) {
      key.ifPresent(print -> own(object, "key", print, holders));
      keys.forEach(each -> own(each.object(), "fingerprint", each.key().fingerprint(), holders));
      Stream<PersonKey> inUse =
          key.stream().map(print -> new PersonKey(print, Optional.empty(), Optional.empty()));
      List<PersonKey> all = Stream.concat(inUse, keys.stream().map(Dated::key)).toList();
      return new Person(initials, name, roles, all);
    }

    private void own(Fields entry, String member, String print, Map<String, String> holders) {
      String holder = holders.putIfAbsent(print, initials);
      if (holder != null && !print.isEmpty()) {
        entry.fault(
            member,
            say("plan.key-of-another", "a key that {0} has already", holder),
            say("json.once", "each once"));
      }
    }
  }

  record Dated(Fields object, @Key(inline = true) PersonKey key) {}

  /** An ingredient, of which the shares must be able to be a whole. */
  record Labelled(Fields object, @Key(inline = true) Ingredient ingredient) {

    /** With its salt stated, nothing else may be left; without it, no more than the whole. */
    void check(Practice.CureShares whole) {
      Quantity stated = ingredient.stated();
      Message found = say("plan.shares", "shares of {0} in all", stated);
      if (ingredient.salt().isPresent() && !whole.includes(stated)) {
        object.fault(
            "salt",
            found,
            say(
                "plan.shares-whole",
                "{0} to {1}, with what is left, such as sugar, under \"other\"",
                whole.least(),
                whole.most()));
      } else if (stated.isAbove(whole.most())) {
        object.fault("lot", found, say("words.at-most", "at most {0}", whole.most()));
      }
    }
  }

  @Choice("kind")
  sealed interface Device permits Scale, Thermometer {
    Instrument instrument();
  }

  @Choice("scale")
  record Scale(
      String id,
      @Key(dimension = Dimension.MASS, least = 1, alone = true) List<Quantity> readability,
      @Key(dimension = Dimension.MASS) Optional<Quantity> repeatability,
      @Key(dimension = Dimension.SHARE) Optional<Quantity> humidityAccuracy,
      @Key(dimension = Dimension.TIME) Quantity checkEvery,
      @Key(dimension = Dimension.MASS) Quantity tolerance)
      implements Device, Checked {

    @Override
    public void check(Fields scale) {
      if (readability.stream().map(Quantity::unit).distinct().count() < readability.size()) {
        scale.fault(
            "readability",
            Message.of(Listing.and(readability)),
            say("plan.step-of-unit", "one for each unit"));
      }
    }

    @Override
    public Instrument instrument() {
      return new Instrument(
          id,
          "scale",
          Optional.empty(),
          readability,
          repeatability,
          humidityAccuracy,
          checkEvery,
          tolerance);
    }
  }

  @Choice({"thermometer", "logger"})
  record Thermometer(
      String kind,
      String id,
      @Key(format = "difference") Quantity accuracy,
      @Key(dimension = Dimension.TEMPERATURE) Optional<Quantity> readability,
      @Key(dimension = Dimension.SHARE) Optional<Quantity> humidityAccuracy,
      @Key(dimension = Dimension.TIME) Quantity checkEvery,
      @Key(format = "difference") Quantity tolerance)
      implements Device {

    @Override
    public Instrument instrument() {
      return new Instrument(
          id,
          kind,
          Optional.of(accuracy),
          readability.stream().toList(),
          Optional.empty(),
          humidityAccuracy,
          checkEvery,
          tolerance);
    }
  }
}
