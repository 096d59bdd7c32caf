package org.flitchbook;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A golden picture fails where something moved, and only there. */
final class PictureTest {

  @TempDir private Path folder;
  private Path golden;

  /** White, with a line of one dot's height across it. */
  private static BufferedImage line(int at, int level) {
    BufferedImage image = new BufferedImage(400, 500, BufferedImage.TYPE_BYTE_GRAY);
    for (int y = 0; y < 500; y++) {
      for (int x = 0; x < 400; x++) {
        image.getRaster().setSample(x, y, 0, y == at ? level : 255);
      }
    }
    return image;
  }

  @BeforeEach
  void write() throws IOException {
    Assumptions.assumeFalse(Boolean.getBoolean("golden.write"), "it would write what it compares");
    golden = folder.resolve("picture-test.png");
    ImageIO.write(line(100, 0), "png", golden.toFile());
  }

  @Test
  void the_same_picture_and_one_a_little_lighter_pass() throws IOException {
    Picture.check(golden, line(100, 0));
    Picture.check(golden, line(100, 20));
  }

  @Test
  void a_line_that_moved_fails_and_the_difference_is_drawn() throws IOException {
    Path told = Path.of("target", "pictures", "picture-test.png");
    Files.deleteIfExists(told);
    assertThrows(AssertionError.class, () -> Picture.check(golden, line(101, 0)));
    BufferedImage difference = ImageIO.read(told.toFile());
    assertTrue(difference.getRaster().getSample(7, 101, 0) == 0, "the line is black");
    assertTrue(difference.getRaster().getSample(7, 300, 0) == 255, "what is alike is not");
    Files.delete(told);
  }

  @Test
  void another_size_fails() {
    BufferedImage small = new BufferedImage(10, 10, BufferedImage.TYPE_BYTE_GRAY);
    assertThrows(AssertionError.class, () -> Picture.check(golden, small));
  }
}
