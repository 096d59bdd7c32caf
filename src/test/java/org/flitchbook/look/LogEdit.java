package org.flitchbook.look;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** Edits a log a little, by chance: a byte, a cell, a line, or its end. */
record LogEdit(Random chance) {

  private static final List<String> CELLS =
      List.of(
          "",
          " ",
          "NaN",
          "---",
          "ERR",
          "HI",
          "38.9 F",
          "58,0",
          "5.8e1",
          "-127",
          "85",
          "9999",
          "0",
          "Mai 60",
          "#####",
          "\"",
          "\"open",
          "a,b",
          "2026-02-24 08:02:00",
          "24.02.2026",
          "08:02",
          "4711",
          "1e999",
          "{",
          "=",
          "Time",
          "P1",
          "\u0000",
          "\uFEFF",
          "Event",
          "99/99/99 99:99");

  private static final List<String> LETTERS =
      List.of(
          ",", ";", "\t", "\"", "\n", "\r", "0", "9", "-", "+", ".", ":", " ", "Z", "°", "\u0000");

  byte[] of(byte[] log) {
    String text = new String(log, ISO_8859_1);
    for (int edits = 1 + chance.nextInt(3); edits > 0; edits--) {
      text = once(text);
    }
    return text.getBytes(ISO_8859_1);
  }

  private String once(String text) {
    return switch (chance.nextInt(6)) {
      case 0 -> letter(text, "");
      case 1 -> letter(text, any(LETTERS));
      case 2 -> text.substring(0, place(text));
      case 3 -> cell(text);
      default -> line(text);
    };
  }

  private int place(String text) {
    return chance.nextInt(text.length() + 1);
  }

  private <T> T any(List<T> all) {
    return all.get(chance.nextInt(all.size()));
  }

  /** Puts something in the place of a letter, or before it. */
  private String letter(String text, String put) {
    int at = place(text);
    int behind = Math.min(text.length(), at + chance.nextInt(2));
    return text.substring(0, at) + put + text.substring(behind);
  }

  /** Puts something in the place of all that stands between two delimiters. */
  private String cell(String text) {
    int from = place(text);
    int to = from;
    while (from > 0 && ",;\t\n".indexOf(text.charAt(from - 1)) < 0) {
      from--;
    }
    while (to < text.length() && ",;\t\r\n".indexOf(text.charAt(to)) < 0) {
      to++;
    }
    return text.substring(0, from) + any(CELLS) + text.substring(to);
  }

  private String line(String text) {
    List<String> lines = new ArrayList<>(List.of(text.split("(?<=\n)")));
    int at = chance.nextInt(lines.size());
    switch (chance.nextInt(5)) {
      case 0 -> lines.remove(at);
      case 1 -> lines.add(at, any(lines));
      case 2 -> Collections.swap(lines, at, chance.nextInt(lines.size()));
      case 3 -> lines.add(at, any(CELLS) + "," + any(CELLS) + "\n");
      default -> lines.add(at, "\n");
    }
    return String.join("", lines);
  }
}
