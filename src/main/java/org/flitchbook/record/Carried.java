package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Block;
import org.flitchbook.document.Heading;
import org.flitchbook.document.Paragraph;
import org.flitchbook.reading.FileRead;

/** The last section of every record: the files that it carries, and by what they are known. */
final class Carried {

  private final DayJudged day;
  private final List<FileRead> carried;

  Carried(DayJudged day, List<FileRead> carried) {
    this.day = day;
    this.carried = carried;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading(2, "Evidence carried by this file"));
    blocks.add(new Paragraph(Bound.of(told())));
    blocks.add(table());
    return blocks;
  }

  private String told() {
    List<String> names = carried.stream().map(FileRead::name).toList();
    long left = day.files().stream().filter(file -> !names.contains(file.name())).count();
    return "The files below are attached to this one, byte for byte as they were read: a reader of"
        + " PDF can take them out. From them alone the same is found again."
        + (left == 0
            ? ""
            : " Further files in the book up to this day on which nothing here rests: "
                + left
                + ".");
  }

  private Block table() {
    Grid grid =
        new Grid("Files carried")
            .head("File", 0)
            .head("Read as", 4)
            .number("Bytes", 0)
            .number("Rows", 0)
            .number("Used", 0)
            .head("SHA-256, in two halves", 20);
    for (FileRead file : carried) {
      grid.row(
          file.name(),
          file.use(),
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
