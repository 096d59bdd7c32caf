package org.flitchbook.signing;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.archive.RecordFile;
import org.flitchbook.archive.RecordList;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.Session;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.flitchbook.message.Message;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.SigningKey;

/**
 * A signature that everything allows: makes it, puts the signed file in the record's place, and
 * adds its line to the ledger.
 */
final class Sealing {

  /** Room for a signature alone, and for one with a time stamp in it. */
  private static final int ROOM = 8192;

  private static final int ROOM_WITH_STAMP = 24576;

  private final Session session;
  private final RecordFile record;
  private final byte[] pdf;
  private final Autograph autograph;
  private final SigningKey key;
  private final Optional<String> server;

  /**
   * Nothing is done yet.
   *
   * @param pdf the record's bytes, as they were looked at
   * @param server of time stamps; empty where none is asked
   */
  Sealing(
      Session session,
      RecordFile record,
      byte[] pdf,
      Autograph autograph,
      SigningKey key,
      Optional<String> server) {
    this.session = session;
    this.record = record;
    this.pdf = pdf;
    this.autograph = autograph;
    this.key = key;
    this.server = server;
  }

  /**
   * Does it.
   *
   * @param ledger of the record's book, held; empty where it lies elsewhere
   * @return what was done
   */
  List<Message> into(Optional<LedgerFile> ledger) {
    session.progress(say("signing.progress", "signing"));
    int room = server.isPresent() ? ROOM_WITH_STAMP : ROOM;
    byte[] signed = PdfFile.sign(pdf, autograph.request(room), this::signature);
    refuseOwnFault(signed);
    Disk.writing(record.path(), () -> Disk.replace(record.path(), signed, record.folderForNew()));
    ledger.ifPresent(held -> held.append(List.of(event(signed))));
    List<Message> lines = lines();
    ledger.ifPresent(held -> lines.add(held.end()));
    return lines;
  }

  private byte[] signature(byte[] covered) {
    byte[] signature = Signing.sign(covered, key);
    return server.map(address -> new TimestampClient(address).stamped(signature)).orElse(signature);
  }

  /** What prove would refuse later is not written now. */
  private static void refuseOwnFault(byte[] signed) {
    SignatureCheck check = SignatureCheck.of(signed, PdfFile.signatures(signed).orElseThrow());
    if (!check.isUntouched()) {
      throw new IllegalStateException("a signature just made: " + check.allFaults());
    }
  }

  private Event event(byte[] signed) {
    RecordFile.Filed filed = record.filed().orElseThrow();
    Signatory signatory = autograph.signatory();
    return Event.of(EventType.SIGNED, autograph.time().toInstant(), session.tool())
        .on(filed.day(), filed.revision())
        .about(record.name())
        .by(signatory.person().initials(), signatory.reason())
        .files(Map.of(filed.path(), hash(pdf)), Map.of(filed.path(), hash(signed)))
        .facts(
            Map.of(
                "role",
                signatory.role().word(),
                RecordList.BOX,
                signatory.box(),
                RecordList.KEY,
                autograph.key().fingerprint()));
  }

  private static String hash(byte[] bytes) {
    return SourceFile.of("", bytes).sha256();
  }

  private List<Message> lines() {
    String name = autograph.signatory().person().name();
    Message role = autograph.signatory().role().message();
    List<Message> lines = new ArrayList<>();
    lines.add(say("signing.signed", "{0} is signed.", record.path()));
    lines.add(say("signing.signed-by", "    {0} as {1}, {2}", name, role, autograph.time()));
    lines.add(say("signing.signed-with", "    key {0}", autograph.key().fingerprint()));
    if (server.isPresent()) {
      lines.add(say("signing.stamped", "    with a time stamp"));
    }
    return lines;
  }
}
