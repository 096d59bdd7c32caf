package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.flitchbook.document.Guide;
import org.flitchbook.document.Style;

/** The labels of the limit lines at the right edge of a plot, moved apart where lines are close. */
final class GuideLabels {
  private static final double GAP = 10;

  private static final class Label {
    final double at;
    final List<Line> lines;
    double top;

    Label(double at, List<Line> lines) {
      this.at = at;
      this.lines = lines;
      this.top = at - height() / 2;
    }

    double height() {
      return lines.size() * Type.BODY.leading;
    }
  }

  private final Plot plot;
  private final List<Label> labels = new ArrayList<>();

  GuideLabels(Setting setting, List<Guide> guides, Plot plot, double width) {
    this.plot = plot;
    guides.stream()
        .sorted(Comparator.comparingDouble(Guide::at).reversed())
        .map(
            guide ->
                new Label(
                    plot.y(guide.at()),
                    setting.lines(Type.BODY, Style.PLAIN, guide.label(), width + 0.01)))
        .forEach(labels::add);
    moveDown();
    moveUp();
  }

  private void moveDown() {
    double free = plot.top() - Type.BODY.leading / 2;
    for (Label label : labels) {
      label.top = Math.max(label.top, free);
      free = label.top + label.height();
    }
  }

  /** What was pushed below the plot goes up again, and takes along what is in its way. */
  private void moveUp() {
    double free = plot.bottom() + Type.BODY.leading / 2;
    for (int i = labels.size() - 1; i >= 0; i--) {
      Label label = labels.get(i);
      label.top = Math.min(label.top, free - label.height());
      free = label.top;
    }
  }

  void draw(Pen pen, Owner of) throws IOException {
    for (Label label : labels) {
      double middle = label.top + label.height() / 2;
      pen.hairline(of, Ink.GREY, plot.right(), label.at, plot.right() + GAP - 3, middle);
      for (int i = 0; i < label.lines.size(); i++) {
        double top = label.top + i * Type.BODY.leading;
        pen.line(of, Type.BODY, plot.right() + GAP, top, label.lines.get(i));
      }
    }
  }
}
