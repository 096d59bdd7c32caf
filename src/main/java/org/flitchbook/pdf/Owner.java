package org.flitchbook.pdf;

/** Whom a mark on paper belongs to: an element of the structure tree, or nobody. */
sealed interface Owner permits Element, Owner.Artifact {

  /** Marks that a reader of the structure tree leaves out. */
  enum Artifact implements Owner {
    /** Rules, tints, and the head of a table repeated on a further page. */
    DECORATION,
    /** The running head of a page. */
    HEAD,
    /** The running foot of a page. */
    FOOT
  }
}
