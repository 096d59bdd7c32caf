package org.flitchbook.qrcode;

import static org.flitchbook.message.Message.say;

import com.google.zxing.LuminanceSource;
import com.google.zxing.PlanarYUVLuminanceSource;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.flitchbook.message.Message;

/** A picture; nothing of it is decoded before its size is known. */
final class Picture {

  private static final List<String> FORMATS = List.of("png", "jpeg");

  /** A camera's whole picture. */
  private static final long MOST_DOTS = 40_000_000;

  /** What is decoded of it: a code on a sheet keeps three dots a module, and memory is small. */
  private static final long ENOUGH_DOTS = 12_000_000;

  private final BufferedImage image;

  private Picture(BufferedImage image) {
    this.image = image;
  }

  /**
   * An opened picture.
   *
   * @param picture empty where it can't be read
   * @param why it can't; empty where it can
   */
  record Opened(Optional<Picture> picture, Optional<Message> why) {}

  static Opened open(byte[] bytes) {
    try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(bytes))) {
      Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
      return readers.hasNext() ? open(readers.next(), in) : unknown();
    } catch (IOException | RuntimeException broken) {
      // The decoders of the Java library throw what they like at a broken file.
      return refused(say("qrcode.broken", "a picture that can't be decoded"));
    }
  }

  private static Opened unknown() {
    return refused(say("qrcode.format", "neither a PNG nor a JPEG picture"));
  }

  private static Opened refused(Message why) {
    return new Opened(Optional.empty(), Optional.of(why));
  }

  private static Opened open(ImageReader reader, ImageInputStream in) throws IOException {
    try {
      if (!FORMATS.contains(reader.getFormatName().toLowerCase(Locale.ROOT))) {
        return unknown();
      }
      reader.setInput(in, true, true);
      long dots = (long) reader.getWidth(0) * reader.getHeight(0);
      return dots > MOST_DOTS
          ? refused(
              say(
                  "qrcode.large",
                  "a picture of {0} million dots, of at most {1}",
                  dots / 1_000_000,
                  MOST_DOTS / 1_000_000))
          : new Opened(Optional.of(new Picture(decoded(reader, dots))), Optional.empty());
    } finally {
      reader.dispose();
    }
  }

  private static BufferedImage decoded(ImageReader reader, long dots) throws IOException {
    int step = (int) Math.ceil(Math.sqrt((double) dots / ENOUGH_DOTS));
    ImageReadParam part = reader.getDefaultReadParam();
    part.setSourceSubsampling(step, step, 0, 0);
    return reader.read(0, part);
  }

  /** What is seen of it when it is turned so far and made so much smaller. */
  LuminanceSource view(int degrees, int smaller) {
    int side = (int) Math.ceil(Math.hypot(image.getWidth(), image.getHeight()) / smaller);
    int width = degrees == 0 ? image.getWidth() / smaller : side;
    int height = degrees == 0 ? image.getHeight() / smaller : side;
    BufferedImage grey = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
    Graphics2D paper = grey.createGraphics();
    paper.setColor(Color.WHITE);
    paper.fillRect(0, 0, width, height);
    paper.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    paper.translate(width / 2.0, height / 2.0);
    paper.rotate(Math.toRadians(degrees));
    paper.scale(1.0 / smaller, 1.0 / smaller);
    paper.drawImage(image, -image.getWidth() / 2, -image.getHeight() / 2, null);
    paper.dispose();
    byte[] light = ((DataBufferByte) grey.getRaster().getDataBuffer()).getData();
    return new PlanarYUVLuminanceSource(light, width, height, 0, 0, width, height, false);
  }
}
