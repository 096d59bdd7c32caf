package org.flitchbook.qrcode;

import static org.flitchbook.message.Message.say;

import com.google.zxing.Binarizer;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.ReaderException;
import com.google.zxing.WriterException;
import com.google.zxing.common.GlobalHistogramBinarizer;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.message.Message;

/** Makes QR codes, and reads them from pictures. */
public final class QrCode {

  private static final Map<DecodeHintType, ?> HINTS =
      Map.of(DecodeHintType.TRY_HARDER, Boolean.TRUE);

  /** What is tried until something is read, in degrees; a quarter of a turn makes no difference. */
  private static final List<Integer> TURNS = List.of(0, 30, 60);

  /** By how much the picture is made smaller: that smooths what is large and rough. */
  private static final List<Integer> SIZES = List.of(1, 2, 4);

  private QrCode() {}

  /**
   * What was read from a picture.
   *
   * @param text empty where nothing could be read
   * @param why nothing could be; empty where something was
   */
  public record Reading(Optional<String> text, Optional<Message> why) {}

  /**
   * The rows of the code of a text, from the top: {@code #} where a module is dark, else {@code .},
   * as many as there are rows. The same text gives the same code; with 15 of 100 parts of it
   * spoiled it can still be read. Digits and capitals make the smallest code.
   *
   * @throws IllegalArgumentException where no code holds so much
   */
  public static List<String> rows(String text) {
    try {
      ByteMatrix modules = Encoder.encode(text, ErrorCorrectionLevel.M).getMatrix();
      List<String> rows = new ArrayList<>();
      for (byte[] row : modules.getArray()) {
        StringBuilder drawn = new StringBuilder();
        for (byte module : row) {
          drawn.append(module == 1 ? '#' : '.');
        }
        rows.add(drawn.toString());
      }
      return rows;
    } catch (WriterException unfit) {
      throw new IllegalArgumentException("no code holds \"" + text + "\"", unfit);
    }
  }

  /**
   * Reads the code in a picture, which may be turned, or taken at an angle.
   *
   * @param picture a PNG or JPEG file of at most 40 million dots
   */
  public static Reading read(byte[] picture) {
    Picture.Opened opened = Picture.open(picture);
    return opened
        .picture()
        .map(QrCode::read)
        .orElseGet(() -> new Reading(Optional.empty(), opened.why()));
  }

  private static Reading read(Picture picture) {
    Optional<String> text =
        SIZES.stream()
            .flatMap(smaller -> TURNS.stream().map(turn -> picture.view(turn, smaller)))
            .flatMap(
                light -> Stream.of(new HybridBinarizer(light), new GlobalHistogramBinarizer(light)))
            .flatMap(light -> decoded(light).stream())
            .findFirst();
    Message none =
        say(
            "qrcode.none",
            "no code that can be read: take it from straight above, sharp, and as large as it"
                + " fits");
    return new Reading(text, text.isEmpty() ? Optional.of(none) : Optional.empty());
  }

  private static Optional<String> decoded(Binarizer light) {
    try {
      return Optional.of(new QRCodeReader().decode(new BinaryBitmap(light), HINTS).getText());
    } catch (ReaderException noCode) {
      return Optional.empty();
    }
  }
}
