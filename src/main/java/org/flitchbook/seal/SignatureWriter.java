package org.flitchbook.seal;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.GregorianCalendar;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceDictionary;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.ExternalSigningSupport;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.SignatureOptions;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;
import org.flitchbook.pdf.Pdf;
import org.flitchbook.seal.PdfFile.SignatureRequest;

/** Signs a file: hangs an increment to it that fills one field, and keeps every byte before. */
final class SignatureWriter {
  private static final COSName ETSI = COSName.getPDFName("ETSI.CAdES.detached");
  private static final COSName DOC_MDP = COSName.getPDFName("DocMDP");

  /** Filling of fields and signing; nothing else (ISO 32000-2, table 257). */
  private static final int FORMS_AND_SIGNATURES = 2;

  private final SignatureRequest request;

  SignatureWriter(SignatureRequest request) {
    this.request = request;
  }

  byte[] sign(byte[] pdf, UnaryOperator<byte[]> seal) throws IOException {
    try (PDDocument file = Loader.loadPDF(pdf);
        SignatureOptions options = new SignatureOptions()) {
      file.setDocumentId(UUID.nameUUIDFromBytes(pdf).getMostSignificantBits());
      options.setPreferredSignatureSize(request.room());
      fill(file, options);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      ExternalSigningSupport signing = file.saveIncrementalForExternalSigning(out);
      signing.setSignature(seal.apply(signing.getContent().readAllBytes()));
      byte[] signed = out.toByteArray();
      if (Arrays.mismatch(pdf, signed) != pdf.length) {
        throw new IllegalStateException("signing has changed what was there");
      }
      return signed;
    }
  }

  /**
   * Afterwards the field is where it was: PDFBox takes a signature without a picture for unseen.
   */
  private void fill(PDDocument file, SignatureOptions options) throws IOException {
    PDSignatureField field = field(file);
    PDAnnotationWidget widget = field.getWidgets().get(0);
    PDRectangle place = widget.getRectangle();
    PDAppearanceDictionary panel = new PDAppearanceDictionary();
    panel.setNormalAppearance(Pdf.appearance(file, place, request.lines(), request.words()));
    PDSignature signature = signature();
    field.getCOSObject().setItem(COSName.V, signature);
    file.addSignature(signature, options);
    widget.setRectangle(place);
    widget.setAppearance(panel);
    widget.getCOSObject().setString(COSName.CONTENTS, String.join("\n", request.lines()));
    if (request.certifies()) {
      certify(file.getDocumentCatalog().getCOSObject(), signature.getCOSObject());
    }
  }

  private PDSignatureField field(PDDocument file) {
    PDAcroForm form = file.getDocumentCatalog().getAcroForm(null);
    if (form != null
        && form.getField(request.field()) instanceof PDSignatureField field
        && field.getSignature() == null) {
      return field;
    }
    throw new IllegalArgumentException("no field " + request.field() + " to sign in");
  }

  private PDSignature signature() {
    PDSignature signature = new PDSignature();
    signature.setFilter(PDSignature.FILTER_ADOBE_PPKLITE);
    signature.setSubFilter(ETSI);
    signature.setName(request.name());
    signature.setReason(request.reason());
    signature.setSignDate(GregorianCalendar.from(request.time()));
    return signature;
  }

  private static void certify(COSDictionary catalog, COSDictionary signature) {
    COSDictionary parameters = direct("TransformParams");
    parameters.setItem(COSName.P, COSInteger.get(FORMS_AND_SIGNATURES));
    parameters.setName(COSName.V, "1.2");
    COSDictionary reference = direct("SigRef");
    reference.setItem("TransformMethod", DOC_MDP);
    reference.setItem("TransformParams", parameters);
    COSArray references = new COSArray();
    references.setDirect(true);
    references.add(reference);
    signature.setItem("Reference", references);
    COSDictionary permissions = new COSDictionary();
    permissions.setItem(DOC_MDP, signature);
    catalog.setItem("Perms", permissions);
  }

  private static COSDictionary direct(String type) {
    COSDictionary dictionary = new COSDictionary();
    dictionary.setDirect(true);
    dictionary.setName(COSName.TYPE, type);
    return dictionary;
  }
}
