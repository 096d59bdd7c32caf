package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * What every setter needs: strips run down the pages, and what sticks together is kept together;
 * beside that the setting of text, the root of the structure tree and the fixed wording.
 */
final class Flow {
  private static final double ROUNDING = 0.01;

  /** The part of a page that content may use. */
  final Rectangle frame;

  final TextLayout text;
  final Element root;
  final Words words;
  private final PageSequence pages;
  private final List<Strip> waiting = new ArrayList<>();
  private double y;
  private boolean fresh;
  private boolean held;

  Flow(PageSequence pages, TextLayout text, Element root, Words words) throws IOException {
    this.pages = pages;
    this.frame = pages.frame();
    this.text = text;
    this.root = root;
    this.words = words;
    turn();
  }

  /** Adds a strip that is drawn alike wherever it comes to stand. */
  void add(double before, double height, boolean sticks, Pen.Drawing drawing) throws IOException {
    add(new Strip(before, height, sticks, null, drawing));
  }

  /** Adds a strip below the others. */
  void add(Strip strip) throws IOException {
    waiting.add(strip);
    if (!held && !strip.sticks()) {
      settle();
    }
  }

  /** From here on, until it is let go, everything stands on one page if one can hold it. */
  void hold(boolean together) {
    held = together;
  }

  /** Begins a new page, unless nothing stands on this one. */
  void breakPage() throws IOException {
    settle();
    if (!fresh) {
      turn();
    }
  }

  /** Places what waits for what follows. */
  void settle() throws IOException {
    if (!waiting.isEmpty()
        && !fresh
        && !fits(waiting)
        && heightOf(waiting, true) <= frame.height()) {
      turn();
    }
    for (Strip strip : waiting) {
      place(strip);
    }
    waiting.clear();
  }

  private void place(Strip strip) throws IOException {
    if (!fresh && !fits(List.of(strip))) {
      turn();
    }
    if (fresh && strip.again() != null) {
      place(strip.again());
    }
    y += fresh ? 0 : strip.before();
    strip.drawing().draw(pages.pen(), y);
    y += strip.height();
    fresh = false;
  }

  private boolean fits(List<Strip> strips) {
    return y + heightOf(strips, fresh) <= frame.bottom() + ROUNDING;
  }

  private static double heightOf(List<Strip> strips, boolean atTop) {
    double height = atTop ? -strips.get(0).before() : 0;
    for (Strip strip : strips) {
      height += strip.before() + strip.height();
    }
    return height;
  }

  private void turn() throws IOException {
    pages.next();
    y = frame.top();
    fresh = true;
  }

  /**
   * A piece of a page across its whole width, never cut.
   *
   * @param before room above it, left out at the top of a page
   * @param height without the room above
   * @param sticks whether the next strip must stand on the same page
   * @param again what is drawn above it where it begins a page, such as the head of its table
   */
  record Strip(
      double before, double height, boolean sticks, @Nullable Strip again, Pen.Drawing drawing) {}
}
