package org.flitchbook.plan;

import java.util.List;
import java.util.Optional;
import org.flitchbook.measure.Quantity;

/**
 * The facts under which a limit applies; an empty list or an empty value asks for nothing.
 *
 * @param notNamed a word that the product's name may not hold, unless the plan names support: what
 *     is sold as bacon takes the bacon ceiling whatever the cut
 */
public record Conditions(
    List<CureMethod> cureMethods,
    List<String> cuts,
    List<String> rinds,
    List<String> classes,
    Optional<Quantity> nitriteAtLeast,
    Optional<Quantity> acceleratorAtLeast,
    Optional<String> notNamed,
    Optional<Quantity> thicknessAtMost) {

  /** Nothing is asked for. */
  public static final Conditions NONE =
      new Conditions(
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  public Conditions {
    cureMethods = List.copyOf(cureMethods);
    cuts = List.copyOf(cuts);
    rinds = List.copyOf(rinds);
    classes = List.copyOf(classes);
  }
}
