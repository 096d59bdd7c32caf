package org.flitchbook.seal;

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
}
