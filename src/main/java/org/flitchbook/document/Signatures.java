package org.flitchbook.document;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Boxes to sign in, never split from each other; not empty, each field once. */
public record Signatures(List<Box> boxes) implements Block {
  public Signatures {
    boxes = List.copyOf(boxes);
    Require.notEmpty("signature boxes", boxes);
    Set<String> fields = new HashSet<>();
    for (Box box : boxes) {
      if (!fields.add(box.field())) {
        throw new IllegalArgumentException("signature field stands twice: " + box.field());
      }
    }
  }

  /**
   * A box with lines for signature, printed name, date and time.
   *
   * @param field name of the signature field in the file; not blank, without a full stop
   * @param role who signs, such as "Prepared by"; not blank
   * @param name printed on the name's line; may be empty
   * @param statement what the signer states; may be empty
   */
  public record Box(String field, String role, String name, String statement) {
    public Box {
      Require.notBlank("signature field", field);
      if (field.indexOf('.') >= 0) {
        throw new IllegalArgumentException("signature field has a full stop: " + field);
      }
      Require.notBlank("role of a signature", role);
    }
  }
}
