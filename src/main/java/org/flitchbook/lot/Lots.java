package org.flitchbook.lot;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Day;

/**
 * All lots that the days name.
 *
 * @param lots by their codes
 * @param faults those that touch no single lot
 */
public record Lots(List<Lot> lots, Register register, List<Fault> faults) {

  public Lots {
    lots = List.copyOf(lots);
    faults = List.copyOf(faults);
  }

  /**
   * Assembles every lot that the days name.
   *
   * @param days in order, up to the day judged
   * @param until readings after this are not looked at; a correction counts whatever its time,
   *     since it says what was true
   */
  public static Lots assemble(Plan plan, List<Day> days, Instant until) {
    return new LotAssembly(plan, days, until).lots();
  }

  public Optional<Lot> lot(String code) {
    return lots.stream().filter(lot -> lot.code().equals(code)).findFirst();
  }
}
