package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Signatures;

/** Sets signature boxes, two beside each other, all on one page. */
final class SignatureSetter {
  private static final double GAP = 16;
  private static final int BESIDE = 2;

  private final Press press;

  SignatureSetter(Press press) {
    this.press = press;
  }

  void set(Signatures signatures) throws IOException {
    List<Signatures.Box> boxes = signatures.boxes();
    double width = (press.frame().width() - GAP * (BESIDE - 1)) / BESIDE;
    for (int from = 0; from < boxes.size(); from += BESIDE) {
      List<SigningBox> row = new ArrayList<>();
      for (Signatures.Box box : boxes.subList(from, Math.min(boxes.size(), from + BESIDE))) {
        double x = press.frame().left() + row.size() * (width + GAP);
        row.add(new SigningBox(press, press.root().child("Sect"), box, x, width));
      }
      add(row, from == 0 ? 11 : 9, from + BESIDE < boxes.size());
    }
  }

  private void add(List<SigningBox> row, double before, boolean sticks) throws IOException {
    double height = row.stream().mapToDouble(SigningBox::height).max().orElse(0);
    Drawing drawing =
        (pen, top) -> {
          for (SigningBox box : row) {
            box.draw(pen, top, height);
          }
        };
    press.flow().add(Strip.of(before, height, sticks, drawing));
  }
}
