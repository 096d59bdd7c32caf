package org.flitchbook.seal;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDocument;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Calls PDFBox on a file that anybody may have made. PDFBox reports what is broken in one by
 * exceptions of many kinds. They become an {@link IOException} at the call itself, so that no error
 * of this program is taken for one of the file.
 */
final class PdfBox {
  private PdfBox() {}

  /** A call of PDFBox's own code, and of nothing else. */
  interface Call<T> {
    T run() throws IOException;
  }

  static <T> T call(Call<T> call) throws IOException {
    try {
      return call.run();
    } catch (RuntimeException broken) {
      throw new IOException(broken.toString(), broken);
    }
  }

  /** Loads a file with all its objects. PDFBox would parse each when it is first asked for. */
  static PDDocument load(byte[] pdf) throws IOException {
    PDDocument file = call(() -> Loader.loadPDF(pdf));
    try {
      COSDocument objects = file.getDocument();
      for (COSObjectKey key : List.copyOf(objects.getXrefTable().keySet())) {
        call(() -> objects.getObjectFromPool(key).getObject());
      }
      return file;
    } catch (IOException broken) {
      file.close();
      throw broken;
    }
  }
}
