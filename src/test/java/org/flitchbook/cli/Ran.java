package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;

/**
 * What the program did with a command line: its exit status and both streams, lines ended by \n.
 */
record Ran(int status, String out, String err) {

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

  static Ran of(Object... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    String[] words = new String[args.length];
    for (int i = 0; i < args.length; i++) {
      words[i] = args[i].toString();
    }
    int status = Main.run(words, print(out), print(err));
    return new Ran(status, text(out), text(err));
  }

  /** With a person before both streams who answers its questions, a line each. */
  static Ran asked(String answers, Object... args) {
    InputStream keyboard = System.in;
    System.setIn(new ByteArrayInputStream(answers.getBytes(UTF_8)));
    System.setProperty("flitchbook.asks", "true");
    try {
      return of(args);
    } finally {
      System.clearProperty("flitchbook.asks");
      System.setIn(keyboard);
    }
  }

  /** What was said on both streams. */
  String all() {
    return out + err;
  }

  private static PrintStream print(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, UTF_8);
  }

  private static String text(ByteArrayOutputStream bytes) {
    return bytes.toString(UTF_8).replace(System.lineSeparator(), "\n");
  }

  /** Standard output, which must be one JSON document and nothing after it. */
  JsonNode json() {
    return json(out);
  }

  static JsonNode json(String text) {
    try {
      return JSON.readTree(text);
    } catch (JsonProcessingException broken) {
      throw new AssertionError("no single JSON document: " + text, broken);
    }
  }

  /** Standard output with each run of white space as one space, so that lines may end anywhere. */
  String flat() {
    return out.replaceAll("\\s+", " ");
  }

  Ran expect(int expected) {
    assertEquals(expected, status, () -> out + err);
    return this;
  }
}
