package org.flitchbook.plan;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.flitchbook.json.Fields;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.practice.Practice;

/** Reads the plan's own file, its products by {@link ProductReader}. */
final class PlanReader {

  private final Fields plan;
  private final List<RuleSet> ruleSets;
  private final Catalogue catalogue;
  private final Classes classes;
  private final Optional<Practice> practice;
  private final Wording wording;

  PlanReader(
      Fields plan,
      List<RuleSet> ruleSets,
      Classes classes,
      Optional<Practice> practice,
      Wording wording) {
    this.plan = plan;
    this.ruleSets = ruleSets;
    this.catalogue = new Catalogue(ruleSets);
    this.classes = classes;
    this.practice = practice;
    this.wording = wording;
  }

  Optional<Plan> read(String sha256, List<String> ownTemplates) {
    Formats.check(plan);
    Optional<Establishment> establishment =
        plan.object("establishment").flatMap(this::establishment);
    Optional<Fields> head = plan.object("plan");
    String version = head.map(fields -> fields.text("version")).orElse("");
    Optional<LocalDate> signed = head.flatMap(fields -> Dates.required(fields, "signed"));
    String signedBy = head.map(fields -> fields.text("signedBy")).orElse("");
    Optional<LocalDate> reassess = head.flatMap(fields -> Dates.required(fields, "reassessBy"));
    Set<String> confirmed = head.map(this::confirms).orElse(Set.of());
    Optional<Retention> retention =
        head.flatMap(fields -> retention(fields, establishment, version));
    head.ifPresent(Fields::end);
    List<Person> people = new PeopleReader(plan).read();
    List<Instrument> instruments = each("instruments", "id", this::instrument, Instrument::id);
    List<Room> rooms = each("places", "id", PlanReader::room, Room::id);
    List<Ingredient> ingredients =
        each("ingredients", "lot", PlanReader::ingredient, Ingredient::lot);
    String regime = establishment.map(Establishment::regime).orElse("");
    ProductReader reader =
        new ProductReader(catalogue, classes, regime, version, confirmed, wording);
    List<Product> products = each("products", "code", reader::read, Product::code);
    plan.end();
    if (establishment.isEmpty()
        || signed.isEmpty()
        || reassess.isEmpty()
        || wording.words().isEmpty()
        || practice.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Plan(
            plan.place(),
            sha256,
            version,
            signed.get(),
            signedBy,
            reassess.get(),
            retention,
            establishment.get(),
            people,
            instruments,
            rooms,
            ingredients,
            products,
            ruleSets,
            ownTemplates,
            wording.words().get(),
            practice.get()));
  }

  /** Empty where the classes have no rule for the regime, which the book's own may lack. */
  private Optional<Retention> retention(
      Fields head, Optional<Establishment> house, String version) {
    return house
        .map(Establishment::regime)
        .flatMap(classes::retention)
        .map(rule -> rule.of(head, wording.edition(version)));
  }

  private <T> List<T> each(
      String key, String nameKey, Function<Fields, Optional<T>> reader, Function<T, String> name) {
    return Named.each(plan, key, nameKey, reader, name);
  }

  private Optional<Establishment> establishment(Fields fields) {
    String name = fields.text("name");
    String number = fields.optionalText("number").orElse("");
    String address = fields.text("address");
    String regime = fields.text("regime");
    if (!classes.regimes().isEmpty() && !classes.regimes().contains(regime)) {
      fields.fault("regime", "\"" + regime + "\"", String.join("; ", classes.regimes()));
    }
    Optional<ZoneId> zone =
        fields.parsed("zone", "a zone such as America/New_York", PlanReader::zone);
    Optional<Quantity> altitude = Quantities.altitude(fields, "altitude");
    String paper = fields.optionalParsed("paper", "Letter or A4", PlanReader::paper).orElse("A4");
    Optional<Unit> temperature = fields.parsed("temperature", "°F or °C", PlanReader::temperature);
    char mark =
        fields.optionalParsed("decimalMark", "\".\" or \",\"", PlanReader::mark).orElse('.');
    wording.check(fields);
    boolean alone = fields.optionalBool("soleOperator").orElse(false);
    Optional<String> stamps =
        fields.optionalParsed(
            "timestampUrl", "an address that begins https:// or http://", PlanReader::address);
    fields.end();
    return zone.flatMap(
        known ->
            temperature.map(
                unit ->
                    new Establishment(
                        name, number, address, regime, known, altitude, paper, unit, mark, alone,
                        stamps)));
  }

  private Set<String> confirms(Fields head) {
    Set<String> confirmed = new HashSet<>();
    for (Fields each : head.has("confirms") ? head.objects("confirms") : List.<Fields>of()) {
      String id = each.text("limit");
      if (each.has("limit") && catalogue.find(id).isEmpty()) {
        each.fault("limit", "\"" + id + "\"", "a limit's id" + catalogue.nearest(id));
      }
      confirmed.add(id);
      LimitReader.support(each);
      each.end();
    }
    return confirmed;
  }

  private Optional<Instrument> instrument(Fields fields) {
    String id = fields.text("id");
    String kind = fields.text("kind");
    boolean scale = kind.equals("scale");
    if (!scale && !kind.equals("thermometer") && !kind.equals("logger")) {
      fields.fault("kind", "\"" + kind + "\"", "scale, thermometer or logger");
    }
    Dimension dimension = scale ? Dimension.MASS : Dimension.TEMPERATURE;
    Optional<Quantity> accuracy =
        scale ? Optional.empty() : Quantities.width(fields, "accuracy", dimension);
    Optional<Quantity> readability =
        scale
            ? Quantities.required(fields, "readability", dimension)
            : Quantities.optional(fields, "readability", dimension);
    Optional<Quantity> repeatability =
        scale ? Quantities.optional(fields, "repeatability", dimension) : Optional.empty();
    Optional<Quantity> humidity = Quantities.optional(fields, "humidityAccuracy", Dimension.SHARE);
    Optional<Quantity> every = Quantities.required(fields, "checkEvery", Dimension.TIME);
    Optional<Quantity> tolerance = Quantities.width(fields, "tolerance", dimension);
    return every.flatMap(
        time ->
            tolerance.map(
                width ->
                    new Instrument(
                        id, kind, accuracy, readability, repeatability, humidity, time, width)));
  }

  private static Optional<Room> room(Fields fields) {
    return Optional.of(new Room(fields.text("id"), fields.text("name"), fields.text("kind")));
  }

  private static Optional<Ingredient> ingredient(Fields fields) {
    return Optional.of(
        new Ingredient(
            fields.text("lot"),
            fields.text("name"),
            share(fields, "sodiumNitrite"),
            share(fields, "sodiumNitrate"),
            share(fields, "potassiumNitrite"),
            share(fields, "potassiumNitrate"),
            share(fields, "salt"),
            share(fields, "sodiumAscorbate"),
            share(fields, "sodiumErythorbate"),
            share(fields, "sodiumErythorbateMonohydrate"),
            fields.optionalText("custodian").orElse("")));
  }

  private static Optional<Quantity> share(Fields fields, String key) {
    Optional<Quantity> share = Quantities.optional(fields, key, Dimension.SHARE);
    share
        .filter(value -> value.isAbove(Quantity.of(100, Unit.PERCENT)))
        .ifPresent(value -> fields.fault(key, value.toString(), "at most 100 %"));
    return share;
  }

  private static Optional<ZoneId> zone(String text) {
    try {
      return Optional.of(ZoneId.of(text));
    } catch (DateTimeException noZone) {
      return Optional.empty();
    }
  }

  private static Optional<String> address(String text) {
    return Optional.of(text).filter(url -> url.matches("https?://\\S+"));
  }

  private static Optional<String> paper(String text) {
    return Optional.of(text).filter(name -> name.equals("Letter") || name.equals("A4"));
  }

  private static Optional<Unit> temperature(String text) {
    return Unit.parse(text).filter(unit -> unit.dimension() == Dimension.TEMPERATURE);
  }

  private static Optional<Character> mark(String text) {
    return text.equals(".") || text.equals(",") ? Optional.of(text.charAt(0)) : Optional.empty();
  }
}
