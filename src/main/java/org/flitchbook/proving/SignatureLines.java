package org.flitchbook.proving;

import static java.text.Normalizer.Form.NFC;
import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.BROKEN;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.archive.RecordList;
import org.flitchbook.archive.RecordList.State;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.archive.SignerRole;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Event;
import org.flitchbook.seal.PdfSignatures;

/**
 * The ledger's lines about the signatures of a record, each held against the signature itself: the
 * bytes before it, the bytes with it, its box, its key, and what it states.
 *
 * @param file as it is on the disk
 * @param states of it as the ledger lists them
 */
record SignatureLines(
    SourceFile file,
    List<State> states,
    PdfSignatures look,
    List<SignatureCheck.Each> signed,
    TrustedKeys trusted) {

  /** What contradicts the lines. */
  List<Statement> statements() {
    int lines = states.size() - 1;
    Stream<Statement> number =
        lines == signed.size()
            ? Stream.empty()
            : Stream.of(
                broken(
                    "proving.lines.number",
                    "It holds {0} signatures, and the ledger has lines of {1}.",
                    signed.size(),
                    lines));
    int both = Math.min(lines, signed.size());
    return Stream.concat(number, IntStream.range(0, both).boxed().flatMap(this::compare)).toList();
  }

  private Statement broken(String id, String english, Object... arguments) {
    return new Statement(BROKEN, file.name(), say(id, english, arguments));
  }

  private Stream<Statement> compare(int number) {
    State state = states.get(number + 1);
    SignatureCheck.Each each = signed.get(number);
    int before = number == 0 ? look.printed() : signed.get(number - 1).signed().end();
    long line = state.line().sequence();
    if (!isHash(states.get(number), before) || !isHash(state, each.signed().end())) {
      return Stream.of(
          broken(
              "proving.lines.bytes",
              "Line {0} of the ledger says that a signature was added to it, and it does not begin"
                  + " with the bytes that it had before.",
              line));
    }
    if (!isMadeAs(state.line().event(), each)) {
      return Stream.of(
          broken(
              "proving.lines.signature",
              "Line {0} of the ledger says by whom, as what, why, in which box and with which key"
                  + " it was signed, and no valid signature in it says the same.",
              line));
    }
    return Stream.empty();
  }

  private boolean isHash(State state, int length) {
    byte[] bytes = Arrays.copyOf(file.bytes(), length);
    return SourceFile.of("", bytes).sha256().equals(state.hash());
  }

  private boolean isMadeAs(Event event, SignatureCheck.Each each) {
    String box = each.signed().field();
    String role = event.facts().getOrDefault("role", SignerRole.of(box, look).word());
    String stated = Normalizer.normalize(each.signed().reason(), NFC);
    return each.isValid()
        && Optional.of(box).equals(fact(event, RecordList.BOX))
        && Optional.of(each.fingerprint()).equals(fact(event, RecordList.KEY))
        && role.equals(SignerRole.of(box, look).word())
        && stated.contains(event.reason())
        && trusted.holder(each.fingerprint()).filter(by -> !by.equals(event.by())).isEmpty();
  }

  private static Optional<String> fact(Event event, String word) {
    return Optional.ofNullable(event.facts().get(word));
  }
}
