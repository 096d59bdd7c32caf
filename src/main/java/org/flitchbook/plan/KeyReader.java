package org.flitchbook.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.flitchbook.json.Fields;

/** Reads the keys that people sign with: the one in use, and those with their days. */
final class KeyReader {

  private static final String KEY = "key";
  private static final String PRINT = "fingerprint";
  private static final String A_FINGERPRINT =
      "the SHA-256 fingerprint of a certificate: 64 hexadecimal digits";

  private static final Pattern DIGITS = Pattern.compile("[0-9a-f]{64}");

  private final Map<String, String> holders = new HashMap<>();

  /** The keys of a person; one that somebody has already is a fault. */
  List<PersonKey> read(Fields person, String initials) {
    List<PersonKey> keys = new ArrayList<>();
    person
        .optionalParsed(KEY, A_FINGERPRINT, KeyReader::digits)
        .map(print -> own(person, KEY, print, initials))
        .ifPresent(print -> keys.add(new PersonKey(print, Optional.empty(), Optional.empty())));
    for (Fields each : person.has("keys") ? person.objects("keys") : List.<Fields>of()) {
      Optional<String> fingerprint = each.parsed(PRINT, A_FINGERPRINT, KeyReader::digits);
      Optional<LocalDate> from = Dates.optional(each, "from");
      Optional<LocalDate> until = Dates.optional(each, "until");
      each.end();
      fingerprint
          .map(print -> own(each, PRINT, print, initials))
          .ifPresent(print -> keys.add(new PersonKey(print, from, until)));
    }
    return keys;
  }

  private String own(Fields fields, String key, String fingerprint, String initials) {
    String holder = holders.putIfAbsent(fingerprint, initials);
    if (holder != null) {
      fields.fault(key, "a key that " + holder + " has already", "each key once");
    }
    return fingerprint;
  }

  /** As programs write it, in groups of two with colons or without. */
  private static Optional<String> digits(String text) {
    String digits = text.replaceAll("[: ]", "").toLowerCase(Locale.ROOT);
    return Optional.of(digits).filter(each -> DIGITS.matcher(each).matches());
  }
}
