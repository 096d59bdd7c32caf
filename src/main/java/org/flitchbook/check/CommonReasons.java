package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** Reasons that judges of several kinds give. */
final class CommonReasons {

  private CommonReasons() {}

  static Message passed(What what) {
    return say("check.step.passed", "no \"{0}\" entry, though a later step has begun", what);
  }

  static Message runs(Step step) {
    return say("check.step.runs", "the step {0} runs", step);
  }

  /** Why a time is not shown that holds only as it was written, to the minute. */
  static Message worseMinutes(Quantity worst) {
    return say("check.worse-minutes", "{0} if both minutes are taken at their worse end", worst);
  }

  static Message noEntry(What what) {
    return say("check.entry.none", "no \"{0}\" entry", what);
  }

  static Message noReading(What what) {
    return say("check.reading.none", "no {0} on record", what);
  }

  /** The same of one piece, where there are pieces. */
  static Message ofPiece(Message said, String piece) {
    return piece.isEmpty() ? said : say("check.of-piece", "{0} of piece {1}", said, piece);
  }
}
