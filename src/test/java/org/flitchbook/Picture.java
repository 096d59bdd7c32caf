package org.flitchbook;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/**
 * Compares a grey picture with a golden one. A few edges of letters may come out otherwise on
 * another Java; a line that moved may not.
 *
 * <p>With {@code -Dgolden.write=true} the picture is written instead; look at it before you commit
 * it.
 */
public final class Picture {

  private static final Path DIFFERENCES = Path.of("target", "pictures");

  /** Levels of grey, of 256, by which a dot may differ. */
  private static final int DOT = 32;

  /** One dot in so many may differ by more. */
  private static final int ONE_IN = 2000;

  private Picture() {}

  /**
   * Compares a picture; where it is another one, what differs is written in black to {@code
   * target/pictures}, over the golden picture in light grey.
   *
   * @param golden the file to compare with
   * @param actual of any type; its grey is looked at
   */
  public static void check(Path golden, BufferedImage actual) throws IOException {
    if (Boolean.getBoolean("golden.write")) {
      Files.createDirectories(golden.toAbsolutePath().getParent());
      ImageIO.write(actual, "png", golden.toFile());
    }
    BufferedImage expected = ImageIO.read(golden.toFile());
    if (expected.getWidth() != actual.getWidth() || expected.getHeight() != actual.getHeight()) {
      throw new AssertionError(golden + " has " + size(expected) + ", found " + size(actual));
    }
    BufferedImage difference = like(expected);
    int others = differ(expected, actual, difference);
    int allowed = expected.getWidth() * expected.getHeight() / ONE_IN;
    if (others > allowed) {
      Files.createDirectories(DIFFERENCES);
      Path told = DIFFERENCES.resolve(String.valueOf(golden.getFileName()));
      ImageIO.write(difference, "png", told.toFile());
      throw new AssertionError(
          golden + ": " + others + " dots differ where " + allowed + " may; see " + told);
    }
  }

  private static String size(BufferedImage image) {
    return image.getWidth() + " x " + image.getHeight() + " dots";
  }

  private static BufferedImage like(BufferedImage image) {
    return new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_BYTE_GRAY);
  }

  private static int differ(BufferedImage one, BufferedImage other, BufferedImage difference) {
    int count = 0;
    for (int y = 0; y < one.getHeight(); y++) {
      for (int x = 0; x < one.getWidth(); x++) {
        int grey = grey(one, x, y);
        boolean differs = Math.abs(grey - grey(other, x, y)) > DOT;
        difference.getRaster().setSample(x, y, 0, differs ? 0 : 192 + grey / 4);
        count += differs ? 1 : 0;
      }
    }
    return count;
  }

  /** The sample itself where the picture is grey; else by ITU-R BT.601. */
  private static int grey(BufferedImage image, int x, int y) {
    if (image.getRaster().getNumBands() == 1) {
      return image.getRaster().getSample(x, y, 0);
    }
    int rgb = image.getRGB(x, y);
    return (299 * (rgb >> 16 & 255) + 587 * (rgb >> 8 & 255) + 114 * (rgb & 255)) / 1000;
  }
}
