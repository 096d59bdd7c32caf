package org.flitchbook.lot;

import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;

/**
 * All lots of the days read.
 *
 * @param lots by their codes
 * @param faults those that touch no single lot
 */
public record Assembled(List<Lot> lots, Register register, List<Fault> faults) {
  public Assembled {
    lots = List.copyOf(lots);
    faults = List.copyOf(faults);
  }

  public Optional<Lot> lot(String code) {
    return lots.stream().filter(lot -> lot.code().equals(code)).findFirst();
  }
}
