package org.flitchbook.plan;

import java.util.List;
import java.util.Optional;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;

/**
 * The facts under which a limit applies; an empty list or an empty value asks for nothing.
 *
 * @param notNamed a word that the product's name may not hold, unless the plan names support: what
 *     is sold as bacon takes the bacon ceiling whatever the cut
 */
public record Conditions(
    @Key(name = "cureMethod", optional = true) List<CureMethod> cureMethods,
    @Key(name = "cut", optional = true) List<String> cuts,
    @Key(name = "rind", optional = true, format = "rind") List<String> rinds,
    @Key(name = "class", optional = true) List<String> classes,
    @Key(dimension = Dimension.SHARE) Optional<Quantity> nitriteAtLeast,
    @Key(dimension = Dimension.SHARE) Optional<Quantity> acceleratorAtLeast,
    Optional<String> notNamed,
    @Key(dimension = Dimension.LENGTH) Optional<Quantity> thicknessAtMost) {

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

  /** Whether a limit under these conditions could apply to such a product at all. */
  boolean fit(CureMethod cureMethod, String cut, String productClass) {
    return fitsMethod(cureMethod) && allow(cuts, cut) && allow(classes, productClass);
  }

  boolean fitsMethod(CureMethod has) {
    return cureMethods.isEmpty() || cureMethods.stream().anyMatch(has::isUnderLimitsOf);
  }

  static boolean allow(List<String> wanted, String has) {
    return wanted.isEmpty() || wanted.contains(has);
  }
}
