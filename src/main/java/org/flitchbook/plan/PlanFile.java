package org.flitchbook.plan;

import java.time.LocalDate;
import java.time.Period;
import java.util.List;
import java.util.Optional;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
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
    @Key(unique = "id") List<Room> places,
    @Key(unique = "lot") List<Ingredient> ingredients,
    @Key(unique = "code") List<ProductFile> products) {

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

  @Choice("kind")
  sealed interface Device permits Scale, Thermometer {
    Instrument instrument();
  }

  @Choice("scale")
  record Scale(
      String id,
      @Key(dimension = Dimension.MASS) Quantity readability,
      @Key(dimension = Dimension.MASS) Optional<Quantity> repeatability,
      @Key(dimension = Dimension.SHARE) Optional<Quantity> humidityAccuracy,
      @Key(dimension = Dimension.TIME) Quantity checkEvery,
      @Key(dimension = Dimension.MASS) Quantity tolerance)
      implements Device {

    @Override
    public Instrument instrument() {
      return new Instrument(
          id,
          "scale",
          Optional.empty(),
          Optional.of(readability),
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
          readability,
          Optional.empty(),
          humidityAccuracy,
          checkEvery,
          tolerance);
    }
  }
}
