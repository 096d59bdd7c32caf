package org.flitchbook.seal;

import java.nio.ByteBuffer;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.flitchbook.message.Message;

/**
 * The fields and signatures of a file.
 *
 * @param fields the names of the fields to sign in, in their order
 * @param signatures in the order in which they were made
 * @param printed the number of the file's first bytes that were there before anybody signed
 * @param faults in how the file was saved and signed
 */
public record PdfSignatures(
    List<String> fields, List<PdfSignature> signatures, int printed, List<Message> faults) {
  public PdfSignatures {
    fields = List.copyOf(fields);
    signatures = List.copyOf(signatures);
    faults = List.copyOf(faults);
  }

  public Optional<PdfSignature> signature(String field) {
    return signatures.stream().filter(each -> each.field().equals(field)).findFirst();
  }

  /**
   * A signature as it stands in a file; whether it is true is for others to say.
   *
   * @param field that it fills
   * @param name of the signer, as it is stated
   * @param time of signing, as it is stated
   * @param certifies whether it allows nothing further than filling fields and signing
   * @param seal the signature proper, without the zeros behind it; empty where there is none
   * @param before the bytes that it covers up to its own place
   * @param after the bytes that it covers behind that, up to its revision's end
   * @param end the number of the file's bytes up to there
   * @param faults in how it is put into the file
   */
  public record PdfSignature(
      String field,
      String name,
      String reason,
      Optional<OffsetDateTime> time,
      boolean certifies,
      ByteBuffer seal,
      ByteBuffer before,
      ByteBuffer after,
      int end,
      List<Message> faults) {

    public PdfSignature {
      faults = List.copyOf(faults);
      seal = seal.asReadOnlyBuffer();
      before = before.asReadOnlyBuffer();
      after = after.asReadOnlyBuffer();
    }

    /** The bytes that it covers, in one piece. */
    public byte[] covered() {
      ByteBuffer bytes = ByteBuffer.allocate(before.remaining() + after.remaining());
      return bytes.put(before.duplicate()).put(after.duplicate()).array();
    }

    /** The seal's bytes, copied. */
    public byte[] sealed() {
      return ByteBuffer.allocate(seal.remaining()).put(seal.duplicate()).array();
    }
  }
}
