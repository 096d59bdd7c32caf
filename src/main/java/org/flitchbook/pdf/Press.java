package org.flitchbook.pdf;

/**
 * What every setter needs: where strips go, how text is set, and the root of the structure tree.
 */
record Press(Flow flow, Setting setting, Element root) {
  Frame frame() {
    return flow.frame();
  }
}
