package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import java.util.function.Predicate;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.flitchbook.document.Block;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Document;
import org.flitchbook.document.Facts;
import org.flitchbook.document.Signatures;
import org.flitchbook.document.Sum;
import org.flitchbook.document.Table;

/** Hands each block to the setter that knows how it looks. */
final class Composer {
  private final Document document;
  private final Sheets sheets;
  private final Press press;
  private final WordSetter words;

  Composer(PDDocument file, Document document, Element root, Anchors anchors) throws IOException {
    Fonts fonts = new Fonts(file);
    Setting setting = new Setting(fonts, document.words());
    this.document = document;
    this.sheets = new Sheets(file, fonts, new RunningLines(setting, document), document.words());
    this.press = new Press(new Flow(sheets), setting, root, anchors, document.words());
    this.words = new WordSetter(press);
  }

  /** Sets the whole document and returns its pages. */
  List<Sheet> compose() throws IOException {
    words.title(document.title(), document.subject());
    List<Block> blocks = document.blocks();
    for (int i = 0; i < blocks.size(); i++) {
      boolean leads = leadsToBoxes(blocks.subList(i + 1, blocks.size()));
      if (blocks.get(i) instanceof Table table) {
        new TableSetter(press, table, leads).set();
      } else {
        press.flow().hold(leads);
        set(blocks.get(i));
      }
    }
    press.flow().finish();
    sheets.finish();
    return sheets.all();
  }

  /** Boxes to sign never stand alone: with them go the words above, and rows of a table. */
  private static boolean leadsToBoxes(List<Block> next) {
    Predicate<Block> between =
        block ->
            block instanceof Block.Note || block instanceof Facts || block instanceof Block.Caution;
    return next.stream()
        .dropWhile(between)
        .findFirst()
        .filter(Signatures.class::isInstance)
        .isPresent();
  }

  private void set(Block block) throws IOException {
    if (block instanceof Block.Heading heading) {
      words.set(heading);
    } else if (block instanceof Block.Paragraph paragraph) {
      words.set(paragraph);
    } else if (block instanceof Block.Note note) {
      words.set(note);
    } else if (block instanceof Block.Banner banner) {
      new FrameSetter(press).set(banner);
    } else if (block instanceof Block.Caution caution) {
      new FrameSetter(press).set(caution);
    } else if (block instanceof Block.PageBreak) {
      press.flow().breakPage();
    } else {
      setGrid(block);
    }
  }

  private void setGrid(Block block) throws IOException {
    if (block instanceof Facts facts) {
      new FactsSetter(press, facts).set();
    } else if (block instanceof Sum sum) {
      new SumSetter(press, sum).set();
    } else if (block instanceof Chart chart) {
      new ChartSetter(press, chart).set();
    } else if (block instanceof Block.Blank blank) {
      new BlankSetter(press, blank).set();
    } else if (block instanceof Signatures signatures) {
      new SignatureSetter(press).set(signatures);
    }
  }
}
