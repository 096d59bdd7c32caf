package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Block;
import org.flitchbook.reading.FileRead;

/** The last section of every record: the files that it carries, and by what they are known. */
final class Carried {

  private final DayJudged day;
  private final List<FileRead> carried;
  private final Phrases phrases;

  Carried(DayJudged day, List<FileRead> carried) {
    this.day = day;
    this.carried = carried;
    this.phrases = day.phrases();
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(phrases.heading("record.carried.heading", "Evidence carried by this file"));
    blocks.add(phrases.paragraph(told()));
    blocks.add(new FilingSection(day).ledger());
    blocks.add(table());
    return blocks;
  }

  private String told() {
    List<String> names = carried.stream().map(FileRead::name).toList();
    long left = day.files().stream().filter(file -> !names.contains(file.name())).count();
    String attached =
        phrases.say(
            "record.carried.attached",
            "The files below are attached to this one, byte for byte as they were read: a reader of"
                + " PDF can take them out. From them alone the same is found again.");
    return left == 0
        ? attached
        : attached
            + " "
            + phrases.say(
                "record.carried.left",
                "Further files in the book up to this day on which nothing here rests: {0}.",
                left);
  }

  private Block table() {
    Grid grid =
        phrases
            .grid("record.carried.caption", "Files carried")
            .head("record.carried.file", "File", 0)
            .head("record.carried.read-as", "Read as", 4)
            .number("record.carried.bytes", "Bytes", 0)
            .number("record.carried.rows", "Rows", 0)
            .number("record.carried.used", "Used", 0)
            .head("record.carried.hash", "SHA-256, in two halves", 20);
    for (FileRead file : carried) {
      grid.row(
          file.name(),
          phrases.word("use", file.use()),
          String.valueOf(file.bytes()),
          file.rows() == 0 ? "–" : String.valueOf(file.rows()),
          file.rows() == 0 ? "–" : String.valueOf(file.used()),
          inTwo(file.sha256()));
    }
    return grid.table();
  }

  /** So that a line can end in the middle of it. */
  private static String inTwo(String sha256) {
    int half = sha256.length() / 2;
    return sha256.substring(0, half) + " " + sha256.substring(half);
  }
}
