package org.flitchbook.judging;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.NavigableMap;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.flitchbook.book.Book;
import org.flitchbook.input.SourceFile;

/** Damages some files of a book: bytes, lines, cells and whole stretches, by chance. */
record Damage(SplittableRandom chance) {

  private static final List<String> WORDS =
      List.of(
          "",
          " ",
          ",",
          ";",
          "\t",
          "\"",
          "\"\"",
          "\n",
          "\r",
          "\r\n",
          "-",
          ".",
          "0",
          "-0",
          "9",
          "e9",
          "1e999999",
          "99999999999999999999",
          "0.0000000000000001",
          "NaN",
          "−127",
          "32767",
          "°F",
          "°C",
          "g",
          "lb",
          "tsp",
          "%",
          "\u0000",
          "\u00A0",
          "\uFEFF",
          "\u202E",
          "é",
          "𐐷",
          "ﷺ",
          "测",
          "26047-B1",
          "day",
          "../",
          "C:\\",
          "cure.csv:3",
          "2026-02-16/cure.csv:3",
          "on",
          "off",
          "2026-11-01 01:30",
          "2026-03-08 02:30",
          "+99999-01-01T00:00",
          "2026-02-30 10:00",
          "null",
          "true",
          "{",
          "}",
          "[",
          "]",
          ":",
          "{\"",
          "\"a\": 1,",
          "1.5 h",
          "-3 d",
          "0 d",
          "100000000 d",
          "130 °F",
          "-460 °F",
          "at most",
          "green weight",
          "explained",
          "internal temperature",
          "into cure",
          "out of chill",
          "corrects",
          "[[[[[[[[",
          "\\u0000",
          "\\ud800");

  Book of(Book book) {
    SourceFile plan = chance.nextInt(4) == 0 ? damaged(book.plan()) : book.plan();
    NavigableMap<LocalDate, List<SourceFile>> days = new TreeMap<>();
    book.days()
        .forEach(
            (day, files) -> {
              List<SourceFile> each = new ArrayList<>();
              files.forEach(file -> each.add(chance.nextInt(6) == 0 ? damaged(file) : file));
              days.put(day, each);
            });
    return new Book(
        book.folder(),
        plan,
        book.formerPlans(),
        days,
        book.unread(),
        book.templates(),
        book.ownTemplates(),
        book.faults());
  }

  private SourceFile damaged(SourceFile file) {
    byte[] bytes = file.bytes();
    for (int edits = 1 + chance.nextInt(4); edits > 0; edits--) {
      bytes = chance.nextInt(3) == 0 ? bits(bytes) : text(bytes);
    }
    return SourceFile.of(file.name(), bytes);
  }

  private byte[] bits(byte[] old) {
    byte[] bytes = old.clone();
    if (bytes.length > 0) {
      bytes[chance.nextInt(bytes.length)] = (byte) chance.nextInt(256);
    }
    return bytes;
  }

  private byte[] text(byte[] old) {
    return switch (chance.nextInt(6)) {
      case 0 -> spliced(old, at(old), 0, word());
      case 1 -> spliced(old, at(old), 1 + chance.nextInt(12), word());
      case 2 -> line(old, new byte[0]);
      case 3 -> line(old, lines(old).get(chance.nextInt(lines(old).size())));
      case 4 -> cell(old);
      default -> spliced(old, at(old), chance.nextInt(20) == 0 ? old.length : 0, new byte[0]);
    };
  }

  private int at(byte[] bytes) {
    return chance.nextInt(bytes.length + 1);
  }

  private byte[] word() {
    return WORDS.get(chance.nextInt(WORDS.size())).getBytes(UTF_8);
  }

  private static byte[] spliced(byte[] old, int at, int length, byte[] between) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    int end = Math.min(old.length, at + length);
    bytes.write(old, 0, at);
    bytes.writeBytes(between);
    bytes.write(old, end, old.length - end);
    return bytes.toByteArray();
  }

  private static List<byte[]> lines(byte[] bytes) {
    List<byte[]> lines = new ArrayList<>();
    int from = 0;
    for (int i = 0; i <= bytes.length; i++) {
      if (i == bytes.length || bytes[i] == '\n') {
        lines.add(Arrays.copyOfRange(bytes, from, Math.min(bytes.length, i + 1)));
        from = i + 1;
      }
    }
    return lines;
  }

  /** A line in the place of another: nothing, or another line of the file. */
  private byte[] line(byte[] old, byte[] with) {
    List<byte[]> lines = lines(old);
    lines.set(chance.nextInt(lines.size()), with);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    lines.forEach(bytes::writeBytes);
    return bytes.toByteArray();
  }

  /** What lies between two commas, replaced by a word. */
  private byte[] cell(byte[] old) {
    int from = at(old);
    while (from > 0 && old[from - 1] != ',' && old[from - 1] != '\n') {
      from--;
    }
    int end = from;
    while (end < old.length && old[end] != ',' && old[end] != '\n') {
      end++;
    }
    return spliced(old, from, end - from, word());
  }
}
