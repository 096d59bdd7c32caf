package org.flitchbook.document;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Boxes to sign in, never split from each other; not empty, each field once. */
public record Signatures(List<SignatureBox> boxes) implements Block {
  public Signatures {
    boxes = List.copyOf(boxes);
    Demand.some("signature boxes", boxes);
    Set<String> fields = new HashSet<>();
    for (SignatureBox box : boxes) {
      if (!fields.add(box.field())) {
        throw new IllegalArgumentException("signature field stands twice: " + box.field());
      }
    }
  }
}
