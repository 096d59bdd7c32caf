package org.flitchbook.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.text.PDFTextStripper;
import org.flitchbook.input.SourceFile;

/** Reads printed records back. */
final class Pdfs {

  private Pdfs() {}

  /** The text in the order of the page, one line of print a line, no-break spaces as spaces. */
  static String text(Path pdf) {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setSortByPosition(true);
      stripper.setLineSeparator("\n");
      stripper.setPageEnd("\f\n");
      return stripper.getText(document).replace('\u00a0', ' ');
    } catch (IOException unreadable) {
      throw new UncheckedIOException(pdf.toString(), unreadable);
    }
  }

  /** The files that a print carries, each under its description. */
  static List<SourceFile> attachments(Path pdf) {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      List<SourceFile> files = new ArrayList<>();
      for (PDComplexFileSpecification each :
          document.getDocumentCatalog().getNames().getEmbeddedFiles().getNames().values()) {
        byte[] bytes = each.getEmbeddedFileUnicode().toByteArray();
        files.add(SourceFile.of(each.getFileDescription(), bytes));
      }
      return files;
    } catch (IOException unreadable) {
      throw new UncheckedIOException(pdf.toString(), unreadable);
    }
  }
}
