package org.flitchbook.qrcode;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.flitchbook.qrcode.QrCode.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Codes drawn and read again, from pictures good, bad and made to hurt. */
final class QrCodeTest {

  private static final String HEAD =
      "26 3F2A9C1B77AA0C1D55E2000000000000000000000000000000000000000000FF";

  private static BufferedImage drawn(String text, int module, double turned, int type) {
    List<String> rows = QrCode.rows(text);
    int size = (rows.size() + 24) * module;
    BufferedImage picture = new BufferedImage(size, size, type);
    Graphics2D pen = picture.createGraphics();
    pen.setColor(Color.WHITE);
    pen.fillRect(0, 0, size, size);
    pen.rotate(Math.toRadians(turned), size / 2.0, size / 2.0);
    pen.setColor(Color.BLACK);
    for (int y = 0; y < rows.size(); y++) {
      for (int x = 0; x < rows.size(); x++) {
        if (rows.get(y).charAt(x) == '#') {
          pen.fillRect((x + 12) * module, (y + 12) * module, module, module);
        }
      }
    }
    pen.dispose();
    return picture;
  }

  private static byte[] file(BufferedImage picture, String format) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      assertTrue(ImageIO.write(picture, format, out), format);
    } catch (IOException unwritable) {
      throw new UncheckedIOException(unwritable);
    }
    return out.toByteArray();
  }

  private static String why(byte[] picture) {
    Reading reading = QrCode.read(picture);
    assertEquals(Optional.empty(), reading.text());
    return reading.why().orElseThrow().toString();
  }

  @Test
  void the_head_of_a_ledger_makes_a_code_of_33_modules_always_the_same() {
    assertEquals(33, QrCode.rows(HEAD).size());
    assertEquals(QrCode.rows(HEAD), QrCode.rows(HEAD));
    assertEquals(33, QrCode.rows(HEAD.replace("26 ", "999999999999999 ")).size());
  }

  @ParameterizedTest
  @CsvSource({
    "png, 3, 0",
    "png, 8, 0",
    "png, 6, 90",
    "png, 6, 180",
    "png, 9, 17",
    "jpeg, 5, 0",
    "jpeg, 8, 45"
  })
  void what_was_drawn_is_read(String format, int module, double turned) {
    BufferedImage picture = drawn(HEAD, module, turned, BufferedImage.TYPE_INT_RGB);
    assertEquals(Optional.of(HEAD), QrCode.read(file(picture, format)).text());
  }

  @Test
  void a_ground_that_is_not_there_is_paper() {
    BufferedImage picture = drawn(HEAD, 4, 0, BufferedImage.TYPE_INT_ARGB);
    int white = Color.WHITE.getRGB();
    for (int y = 0; y < picture.getHeight(); y++) {
      for (int x = 0; x < picture.getWidth(); x++) {
        picture.setRGB(x, y, picture.getRGB(x, y) == white ? 0 : picture.getRGB(x, y));
      }
    }
    assertEquals(Optional.of(HEAD), QrCode.read(file(picture, "png")).text());
  }

  @Test
  void a_large_picture_is_read_in_part() {
    BufferedImage page = new BufferedImage(6000, 6000, BufferedImage.TYPE_BYTE_GRAY);
    Graphics2D pen = page.createGraphics();
    pen.setColor(Color.WHITE);
    pen.fillRect(0, 0, 6000, 6000);
    BufferedImage code = drawn(HEAD, 11, 0, BufferedImage.TYPE_BYTE_GRAY);
    pen.drawImage(code, 4000, 300, null);
    pen.dispose();
    assertEquals(Optional.of(HEAD), QrCode.read(file(page, "png")).text());
  }

  @Test
  void a_picture_without_a_code_says_so() {
    BufferedImage empty = new BufferedImage(200, 200, BufferedImage.TYPE_BYTE_GRAY);
    assertTrue(why(file(empty, "png")).startsWith("no code that can be read"));
  }

  @Test
  void what_is_no_png_or_jpeg_is_not_decoded() {
    BufferedImage picture = drawn(HEAD, 4, 0, BufferedImage.TYPE_INT_RGB);
    assertEquals("neither a PNG nor a JPEG picture", why(file(picture, "bmp")));
    assertEquals("neither a PNG nor a JPEG picture", why("%PDF-1.7".getBytes(UTF_8)));
    assertEquals("neither a PNG nor a JPEG picture", why(new byte[0]));
  }

  /** A few bytes that say they are 60,000 dots wide and high. */
  @Test
  void a_picture_of_more_than_40_million_dots_is_refused_before_it_is_decoded() {
    byte[] png = file(new BufferedImage(1, 1, BufferedImage.TYPE_BYTE_GRAY), "png");
    ByteBuffer.wrap(png).putInt(16, 60_000).putInt(20, 60_000);
    assertEquals("a picture of 3600 million dots, of at most 40", why(png));
  }

  @Test
  void a_picture_cut_off_or_spoiled_is_refused_or_read() {
    byte[] whole = file(drawn(HEAD, 4, 0, BufferedImage.TYPE_INT_RGB), "png");
    for (int length = 0; length < whole.length; length += 7) {
      Reading cut = QrCode.read(Arrays.copyOf(whole, length));
      assertTrue(cut.text().isPresent() != cut.why().isPresent(), "cut at " + length);
    }
    for (int at = 8; at < whole.length; at += 3) {
      byte[] spoiled = whole.clone();
      spoiled[at] ^= 0x55;
      Reading reading = QrCode.read(spoiled);
      assertTrue(reading.text().isPresent() != reading.why().isPresent(), "spoiled at " + at);
    }
  }

  @Test
  void a_text_too_long_makes_no_code() {
    assertThrows(IllegalArgumentException.class, () -> QrCode.rows("A".repeat(5000)));
  }
}
