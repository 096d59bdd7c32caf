package org.flitchbook.document;

import java.util.Objects;

/**
 * A box with lines for signature, printed name, date and time.
 *
 * @param field name of the signature field in the file; not blank, without a full stop
 * @param role who signs, such as "Prepared by"; not blank
 * @param name printed on the name's line; may be empty
 * @param statement what the signer states; may be empty
 */
public record SignatureBox(String field, String role, String name, String statement) {
  public SignatureBox {
    Demand.words("signature field", field);
    if (field.indexOf('.') >= 0) {
      throw new IllegalArgumentException("signature field has a full stop: " + field);
    }
    Demand.words("role of a signature", role);
    Objects.requireNonNull(name, "name of a signature");
    Objects.requireNonNull(statement, "statement of a signature");
  }
}
