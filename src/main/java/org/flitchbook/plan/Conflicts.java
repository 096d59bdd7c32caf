package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;

/** Limits of one product that can't, or can only just, be met together. */
final class Conflicts {

  private Conflicts() {}

  /** Each conflict in one sentence. Limits of one group need not be met together. */
  static List<Message> in(List<Limit> limits) {
    List<Message> sentences = new ArrayList<>();
    for (Limit ceiling : limits) {
      if (ceiling.kind() instanceof Kind.Bound bound && bound.ceiling()) {
        for (Limit other : limits) {
          if (ceiling.group().isEmpty() || !ceiling.group().equals(other.group())) {
            wanted(other, bound.figure())
                .flatMap(least -> sentence(ceiling, bound.limit(), other, least))
                .ifPresent(sentences::add);
          }
        }
      }
    }
    return sentences;
  }

  /** The least of a figure that a limit asks for, as its number or as its condition. */
  private static Optional<Quantity> wanted(Limit limit, Figure figure) {
    if (limit.kind() instanceof Kind.Bound bound && !bound.ceiling() && bound.figure() == figure) {
      return Optional.of(bound.limit());
    }
    return switch (figure) {
      case INGOING_NITRITE -> limit.when().nitriteAtLeast();
      case INGOING_ACCELERATOR -> limit.when().acceleratorAtLeast();
      default -> Optional.empty();
    };
  }

  private static Optional<Message> sentence(
      Limit ceiling, Quantity most, Limit other, Quantity least) {
    int order = least.compareTo(most);
    if (order < 0) {
      return Optional.empty();
    }
    return Optional.of(
        order > 0
            ? say(
                "planned.both-impossible",
                "{0} asks for at least {1}, {2} allows at most {3}: both can't be met",
                other.id(),
                least,
                ceiling.id(),
                most)
            : say(
                "planned.both-exactly",
                "{0} asks for at least {1}, {2} allows at most {3}: only exactly {3} meets both",
                other.id(),
                least,
                ceiling.id(),
                most));
  }
}
