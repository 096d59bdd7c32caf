package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.document.Block.Signatures;
import org.flitchbook.document.Block.Sum;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Document;
import org.flitchbook.document.Table;

/** Hands each block to the setter that knows how it looks. */
final class Composer {
  private static final Set<Class<? extends Block>> BETWEEN =
      Set.of(Block.Note.class, Facts.class, Block.Caution.class);

  private final Document document;
  private final PageSequence pages;
  private final Flow flow;
  private final TextSetter words;

  Composer(PDDocument file, Document document, Archive archive) throws IOException {
    TextLayout text = new TextLayout(file, document.words());
    this.document = document;
    this.pages = new PageSequence(file, archive, text, document);
    this.flow = new Flow(pages, text, archive.root, document.words());
    this.words = new TextSetter(flow);
  }

  /** Sets the whole document. */
  void compose() throws IOException {
    words.title(document.title(), document.subject());
    List<Block> blocks = document.blocks();
    for (int i = 0; i < blocks.size(); i++) {
      set(blocks.get(i), leadsToBoxes(blocks.subList(i + 1, blocks.size())));
    }
    flow.settle();
    pages.finish();
  }

  /** Boxes to sign never stand alone: with them go the words above, and rows of a table. */
  private static boolean leadsToBoxes(List<Block> next) {
    return next.stream()
        .filter(block -> !BETWEEN.contains(block.getClass()))
        .findFirst()
        .filter(Signatures.class::isInstance)
        .isPresent();
  }

  private void set(Block block, boolean leads) throws IOException {
    if (block instanceof Table table) {
      new TableSetter(flow, table, leads).set();
      return;
    }
    flow.hold(leads);
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
      flow.breakPage();
    } else {
      setGrid(block);
    }
  }

  private void setGrid(Block block) throws IOException {
    if (block instanceof Facts facts) {
      new FactsSetter(flow, facts).set();
    } else if (block instanceof Sum sum) {
      new SumSetter(flow, sum).set();
    } else if (block instanceof Chart chart) {
      ChartSetter.set(flow, chart);
    } else if (block instanceof Block.Blank blank) {
      new HandwritingSetter(flow).set(blank);
    } else if (block instanceof Signatures signatures) {
      new HandwritingSetter(flow).set(signatures);
    } else {
      throw new IllegalArgumentException("no setter for " + block.getClass());
    }
  }
}
