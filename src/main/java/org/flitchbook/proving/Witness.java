package org.flitchbook.proving;

import static org.flitchbook.message.Message.count;
import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.BROKEN;
import static org.flitchbook.proving.Statement.Standing.OPEN;
import static org.flitchbook.proving.Statement.Standing.PROVED;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import org.flitchbook.disk.Disk;
import org.flitchbook.job.UsageException;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.ledger.StatedHead;
import org.flitchbook.message.Message;
import org.flitchbook.qrcode.QrCode;

/** A head of the ledger that somebody kept outside of the book, and what the ledger says to it. */
record Witness(StatedHead head) {

  /**
   * What somebody typed or copied, or the path of a picture of the code.
   *
   * @throws UsageException where neither states the head of a ledger
   */
  static Witness of(String given) {
    return StatedHead.read(given)
        .or(() -> picture(given).map(Witness::pictured))
        .map(Witness::new)
        .orElseThrow(
            () ->
                new UsageException(
                    "proving.head.none",
                    "--head \"{0}\" is neither the number of a line with at least {1} digits of its"
                        + " hash, such as \"12 3f2a 9c1b 77aa 0c1d\", nor a picture of the code",
                    given,
                    StatedHead.FEWEST));
  }

  private static Optional<Path> picture(String given) {
    try {
      return Optional.of(Path.of(given)).filter(Files::isRegularFile);
    } catch (InvalidPathException noPath) {
      return Optional.empty();
    }
  }

  private static StatedHead pictured(Path picture) {
    QrCode.Reading reading = QrCode.read(Disk.read(picture));
    String text = reading.text().orElseThrow(() -> unread(picture, reading.why().orElseThrow()));
    return StatedHead.read(text)
        .orElseThrow(
            () -> unread(picture, say("proving.head.other-code", "the code of something else")));
  }

  private static UsageException unread(Path picture, Message found) {
    return new UsageException(
        "proving.head.unread",
        "{0}: found {1}, expected a picture of the code on a record; what stands beside the code"
            + " can be typed",
        picture,
        found);
  }

  /** Whether the ledger still continues from it. */
  Statement in(Ledger ledger) {
    if (!ledger.faults().isEmpty()) {
      return new Statement(
          OPEN,
          "proving.head.broken-chain",
          "Whether the ledger continues from line {0} as you have it can't be said: it is broken.",
          head.sequence());
    }
    return new Statement(isIn(ledger) ? PROVED : BROKEN, Ledger.FILE, message(ledger));
  }

  private boolean isIn(Ledger ledger) {
    return ledger.lines().stream().map(LedgerLine::head).anyMatch(head::states);
  }

  private Message message(Ledger ledger) {
    long last = ledger.head().sequence();
    if (head.sequence() > last) {
      return count(
          "proving.head.taken-out",
          head.sequence() - last,
          "Lines were taken out: the ledger ends at line {1}, and you have the head of line {2}."
              + " The folder lacks that line at least, and the records that it lists.",
          "Lines were taken out: the ledger ends at line {1}, and you have the head of line {2}."
              + " The folder lacks {0} lines at least, {3} to {2}, and the records that they list.",
          last,
          head.sequence(),
          last + 1);
    }
    return isIn(ledger)
        ? count(
            "proving.head.continues",
            last - head.sequence(),
            "The ledger continues from the head that you have: line {1} has that hash, and {0} line"
                + " follows.",
            "The ledger continues from the head that you have: line {1} has that hash, and {0}"
                + " lines follow.",
            head.sequence())
        : say(
            "proving.head.rewritten",
            "Lines were written again: line {0} has another hash than the one that you have, so"
                + " that it, or a line before it, is not the one that was there.",
            head.sequence());
  }
}
