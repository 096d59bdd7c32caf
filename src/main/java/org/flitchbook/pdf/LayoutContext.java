package org.flitchbook.pdf;

import org.flitchbook.words.Words;

/**
 * What every setter needs: where strips go, how text is set, the root of the structure tree, where
 * to note headings, and the fixed wording.
 */
record LayoutContext(
    Flow flow, TextLayout text, Element root, Destinations destinations, Words words) {

  /** The part of a page that content may use. */
  Rectangle frame() {
    return flow.frame();
  }
}
