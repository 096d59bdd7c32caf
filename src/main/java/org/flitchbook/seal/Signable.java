package org.flitchbook.seal;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * What signing in one field changes in a file, and nothing else: the signature, what the field
 * shows within its own box, the text of that, and what the form and the catalog say of signatures.
 */
final class Signable {

  private static final COSName PERMISSIONS = COSName.getPDFName("Perms");
  private static final COSName DOC_MDP = COSName.getPDFName("DocMDP");
  private static final COSName SIGNATURE_FLAGS = COSName.getPDFName("SigFlags");

  /** Places are written to a few digits, in 1/72 inch. */
  private static final float ROUNDING = 0.01f;

  private Signable() {}

  /** The keys that signing changes, in the dictionaries that have them; none without the field. */
  static Map<COSDictionary, Set<String>> changes(PDDocument file, String field) {
    Map<COSDictionary, Set<String>> changes = new HashMap<>();
    COSDictionary catalog = file.getDocumentCatalog().getCOSObject();
    COSDictionary form = catalog.getCOSDictionary(COSName.ACRO_FORM);
    List<COSDictionary> fields = form == null ? List.of() : fields(form, field);
    if (fields.size() == 1) {
      COSDictionary box = fields.get(0);
      changes.put(box, of(box));
      if (form.getDictionaryObject(SIGNATURE_FLAGS) instanceof COSInteger) {
        changes.put(form, Set.of(SIGNATURE_FLAGS.getName()));
      }
      if (isCertifiedBy(catalog, box)) {
        changes.put(catalog, Set.of(PERMISSIONS.getName()));
      }
    }
    return changes;
  }

  /** The fields of the form's own list; a dictionary elsewhere that looks like one is none. */
  private static List<COSDictionary> fields(COSDictionary form, String name) {
    COSArray fields = Optional.ofNullable(form.getCOSArray(COSName.FIELDS)).orElse(new COSArray());
    return IntStream.range(0, fields.size())
        .mapToObj(fields::getObject)
        .filter(COSDictionary.class::isInstance)
        .map(COSDictionary.class::cast)
        .filter(each -> name.equals(each.getString(COSName.T)))
        .filter(each -> COSName.SIG.equals(each.getCOSName(COSName.FT)))
        .toList();
  }

  private static Set<String> of(COSDictionary box) {
    Set<String> changing = new HashSet<>(Set.of(COSName.V.getName()));
    if (box.getDictionaryObject(COSName.CONTENTS) instanceof COSString) {
      changing.add(COSName.CONTENTS.getName());
    }
    if (isWithinBox(box)) {
      changing.add(COSName.AP.getName());
    }
    return changing;
  }

  /** What it shows is one stream that is cut off at the edges of its box. */
  private static boolean isWithinBox(COSDictionary box) {
    COSDictionary looks = box.getCOSDictionary(COSName.AP);
    COSArray place = box.getCOSArray(COSName.RECT);
    if (looks == null || place == null || !looks.keySet().equals(Set.of(COSName.N))) {
      return false;
    }
    COSBase look = looks.getDictionaryObject(COSName.N);
    return look instanceof COSStream panel
        && !panel.containsKey(COSName.MATRIX)
        && isSizeOf(panel.getCOSArray(COSName.BBOX), place);
  }

  private static boolean isSizeOf(COSArray edges, COSArray place) {
    if (edges == null || edges.size() != 4 || place.size() != 4) {
      return false;
    }
    float[] inner = edges.toFloatArray();
    float[] outer = place.toFloatArray();
    return inner[0] == 0
        && inner[1] == 0
        && Math.abs(inner[2] - (outer[2] - outer[0])) <= ROUNDING
        && Math.abs(inner[3] - (outer[3] - outer[1])) <= ROUNDING;
  }

  /** The catalog's permissions are those of this field's own signature, and no others. */
  private static boolean isCertifiedBy(COSDictionary catalog, COSDictionary box) {
    COSDictionary permissions = catalog.getCOSDictionary(PERMISSIONS);
    return permissions != null
        && permissions.keySet().equals(Set.of(DOC_MDP))
        && permissions.getDictionaryObject(DOC_MDP) == box.getDictionaryObject(COSName.V);
  }
}
