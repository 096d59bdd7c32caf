package org.flitchbook.pdf;

import org.flitchbook.words.Words;

/**
 * What every setter needs: where strips go, how text is set, the root of the structure tree, where
 * to note headings, and the fixed wording.
 */
record Press(Flow flow, Setting setting, Element root, Anchors anchors, Words words) {
  Frame frame() {
    return flow.frame();
  }
}
