package org.flitchbook.lot;

import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.plan.Ingredient;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Room;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Shape;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.words.Words;

/** Whether the people, instruments, places and ingredients that entries name are in the plan. */
final class Membership {

  private final Plan plan;
  private final Words words;
  private final List<Fault> faults;

  Membership(Plan plan, List<Fault> faults) {
    this.plan = plan;
    this.words = plan.words();
    this.faults = faults;
  }

  void check(List<Entry> entries) {
    for (Entry entry : entries) {
      person(entry);
      instrument(entry);
      room(entry);
      ingredient(entry);
    }
  }

  private void person(Entry entry) {
    if (!entry.by().isEmpty() && plan.person(entry.by()).isEmpty()) {
      stop(
          entry,
          "initials",
          "by",
          entry.by(),
          words.say(
              "lot.member.initials",
              "initials in the plan: {0}",
              String.join(", ", plan.people().stream().map(Person::initials).toList())));
    }
  }

  private void instrument(Entry entry) {
    if (entry.instrument().isEmpty()) {
      return;
    }
    plan.instrument(entry.instrument())
        .ifPresentOrElse(known -> fits(entry, known), () -> unknownInstrument(entry));
  }

  private void unknownInstrument(Entry entry) {
    stop(
        entry,
        "instrument",
        "instrument",
        entry.instrument(),
        words.say(
            "lot.member.instruments",
            "an instrument of the plan: {0}",
            String.join(", ", plan.instruments().stream().map(Instrument::id).toList())));
  }

  private void fits(Entry entry, Instrument instrument) {
    if (entry.is(What.HUMIDITY) && instrument.humidityAccuracy().isEmpty()) {
      stop(
          entry,
          "instrument",
          "instrument",
          instrument.id(),
          words.say(
              "lot.instrument.humidity",
              "an instrument with its \"humidityAccuracy\" in the plan"));
    }
    boolean weighs = entry.what().shape() == Shape.MASS;
    if (weighs != instrument.kind().equals("scale") && entry.what().shape().needsInstrument()) {
      stop(
          entry,
          "instrument",
          "instrument",
          words.say(
              "lot.instrument.is-a",
              "{0}, a {1}",
              instrument.id(),
              words.word("instrument", instrument.kind())),
          weighs
              ? words.say("lot.instrument.scale", "a scale")
              : words.say("lot.instrument.no-scale", "a thermometer or logger"));
    }
  }

  private void room(Entry entry) {
    boolean into = Step.ofWork().stream().anyMatch(step -> step.into() == entry.what());
    boolean ofPlaceAlone = entry.lot().isEmpty() && entry.sheet().step().isPresent();
    if ((into || ofPlaceAlone) && plan.room(entry.item()).isEmpty()) {
      stop(
          entry,
          "place",
          "item",
          entry.item(),
          words.say(
              "lot.member.places",
              "a place of the plan: {0}",
              String.join(", ", plan.rooms().stream().map(Room::id).toList())));
    }
  }

  private void ingredient(Entry entry) {
    if (entry.is(What.CURING_SALT) && plan.ingredient(entry.item()).isEmpty()) {
      stop(
          entry,
          "curing salt",
          "item",
          entry.item().isEmpty() ? words.say("words.nothing", "nothing") : entry.item(),
          words.say(
              "lot.member.ingredients",
              "a lot of curing salt in the plan: {0}",
              String.join(", ", plan.ingredients().stream().map(Ingredient::lot).toList())));
    }
  }

  private void stop(Entry entry, String rule, String column, String found, String expected) {
    faults.add(Fault.stop(rule, entry.lot(), entry.place().column(column), found, expected));
  }
}
