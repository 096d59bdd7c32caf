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
  private final PageSequence pages;
  private final LayoutContext context;
  private final TextSetter words;

  Composer(PDDocument file, Document document, Element root, Destinations destinations)
      throws IOException {
    Fonts fonts = new Fonts(file);
    TextLayout text = new TextLayout(fonts, document.words());
    this.document = document;
    this.pages = new PageSequence(file, fonts, text, document);
    this.context = new LayoutContext(new Flow(pages), text, root, destinations, document.words());
    this.words = new TextSetter(context);
  }

  /** Sets the whole document and returns its pages. */
  List<TaggedPage> compose() throws IOException {
    words.title(document.title(), document.subject());
    List<Block> blocks = document.blocks();
    for (int i = 0; i < blocks.size(); i++) {
      boolean leads = leadsToBoxes(blocks.subList(i + 1, blocks.size()));
      if (blocks.get(i) instanceof Table table) {
        new TableSetter(context, table, leads).set();
      } else {
        context.flow().hold(leads);
        set(blocks.get(i));
      }
    }
    context.flow().finish();
    return pages.finish();
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
      words.set(banner);
    } else if (block instanceof Block.Caution caution) {
      words.set(caution);
    } else if (block instanceof Block.PageBreak) {
      context.flow().breakPage();
    } else {
      setGrid(block);
    }
  }

  private void setGrid(Block block) throws IOException {
    if (block instanceof Facts facts) {
      new FactsSetter(context, facts).set();
    } else if (block instanceof Sum sum) {
      new SumSetter(context, sum).set();
    } else if (block instanceof Chart chart) {
      ChartSetter.set(context, chart);
    } else if (block instanceof Block.Blank blank) {
      new HandwritingSetter(context).set(blank);
    } else if (block instanceof Signatures signatures) {
      new HandwritingSetter(context).set(signatures);
    } else {
      throw new IllegalArgumentException("no setter for " + block.getClass());
    }
  }
}
