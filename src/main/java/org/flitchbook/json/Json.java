package org.flitchbook.json;

import static org.flitchbook.message.Message.say;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import java.io.CharConversionException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.message.Message;

/** Reads JSON (RFC 8259) with the place of each value, and writes it always in the same form. */
public final class Json {

  /** So many letters may a text have. No name and no sentence has more. */
  private static final int LONGEST_TEXT = 100_000;

  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .streamReadConstraints(
              StreamReadConstraints.builder().maxStringLength(LONGEST_TEXT).build())
          .build();

  private static final ObjectWriter WRITER =
      new ObjectMapper()
          .writer(
              new DefaultPrettyPrinter()
                  .withObjectIndenter(new DefaultIndenter("  ", "\n"))
                  .withArrayIndenter(new DefaultIndenter("  ", "\n")));

  private static final Pattern UNSEEN = Pattern.compile("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}&&[^\\n]]");

  private Json() {}

  /**
   * Reads a document whose outermost value is an object. UTF-8, with or without a byte order mark;
   * a key that stands twice, nesting deeper than 1,000 and texts of more than 100,000 letters are
   * refused.
   */
  public static Parsed read(String name, byte[] bytes) {
    try (JsonParser parser = FACTORY.createParser(bytes)) {
      Node root = new TreeReader(name, parser).document();
      return root instanceof Node.Obj object
          ? new Parsed(Optional.of(object), List.of())
          : broken(root.place(), root.found(), Format.OBJECT);
    } catch (JsonProcessingException unreadable) {
      return broken(place(name, unreadable), found(unreadable), say("json.json", "JSON"));
    } catch (CharConversionException noText) {
      return broken(
          Place.of(name),
          say("json.no-text", "bytes that are no text"),
          say("json.utf-8", "JSON in UTF-8"));
    } catch (IOException impossible) {
      throw new UncheckedIOException("reading bytes in memory", impossible);
    }
  }

  /**
   * Where a value stands in the bytes of a document.
   *
   * @param name where its key begins, with the quote; of an item of a list, where it begins itself
   * @param from the first byte of the value
   * @param to the byte behind it
   */
  public record Span(int name, int from, int to) {}

  /**
   * Where each value of a document in UTF-8 stands, by its path, such as {@code people[0].name};
   * the whole document by "". For changing one value and keeping every other byte.
   *
   * @throws IllegalArgumentException where {@link #read} would find a fault
   */
  public static Map<String, Span> spans(byte[] bytes) {
    try (JsonParser parser = FACTORY.createParser(bytes)) {
      TreeReader reader = new TreeReader("", parser);
      reader.document();
      return reader.spans();
    } catch (IOException broken) {
      throw new IllegalArgumentException("this can't be read as JSON", broken);
    }
  }

  /**
   * Writes a document, two spaces a level, a line end at the end.
   *
   * @param tree maps, lists, texts, numbers and booleans; the order of the maps is kept
   */
  public static byte[] write(Object tree) {
    try {
      return (WRITER.writeValueAsString(tree) + "\n").getBytes(StandardCharsets.UTF_8);
    } catch (JsonProcessingException wrong) {
      throw new IllegalArgumentException("this can't be written as JSON", wrong);
    }
  }

  /**
   * The same document with the letters of its texts escaped that no page and no terminal shows:
   * control characters, and marks that turn the direction of writing.
   */
  public static String escaped(String document) {
    return UNSEEN
        .matcher(document)
        .replaceAll(
            unseen ->
                unseen
                    .group()
                    .chars()
                    .mapToObj(letter -> "\\\\u%04x".formatted(letter))
                    .collect(Collectors.joining()));
  }

  private static Parsed broken(Place place, Message found, Message expected) {
    return new Parsed(Optional.empty(), List.of(Fault.broken("JSON", place, found, expected)));
  }

  private static Place place(String name, JsonProcessingException unreadable) {
    return unreadable.getLocation() == null
        ? Place.of(name)
        : Place.of(name, Math.max(0, unreadable.getLocation().getLineNr()));
  }

  private static Message found(JsonProcessingException unreadable) {
    String message = unreadable.getOriginalMessage();
    return message.startsWith("Unexpected end-of-input")
        ? say("json.cut", "the end of the file inside an object, a list or a text")
        : message.lines().findFirst().map(Message::of).orElse(say("json.none", "no JSON"));
  }
}
