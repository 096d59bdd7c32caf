package org.flitchbook.sign;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.Security;
import java.security.cert.Certificate;
import java.time.Instant;
import java.util.List;
import org.flitchbook.sign.Signing.KeyAlgorithm;
import org.flitchbook.sign.Signing.KeyHolder;

/** Keys of the Wrenfold Smokeyard's people, for tests that need true signatures. */
public final class Seals {

  private Seals() {}

  /** A new key of Maud Achterberg. */
  public static SigningKey maud() {
    return key(new KeyHolder("MA", "Maud Achterberg", "Wrenfold Smokeyard"));
  }

  /** A new key of Ismet Quill. */
  public static SigningKey ismet() {
    return key(new KeyHolder("IQ", "Ismet Quill", "Wrenfold Smokeyard"));
  }

  /** A key file with so few rounds that it opens at once; only good for tests. */
  public static byte[] quick(SigningKey key, String passphrase) {
    char[] letters = passphrase.toCharArray();
    List.of("keyPbe", "certPbe", "mac")
        .forEach(each -> Security.setProperty("keystore.pkcs12." + each + "IterationCount", "10"));
    try {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(null, null);
      store.setKeyEntry("quick", key.secret(), letters, new Certificate[] {key.certificate()});
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      store.store(bytes, letters);
      return bytes.toByteArray();
    } catch (GeneralSecurityException | IOException refused) {
      throw new AssertionError(refused);
    }
  }

  /** A new key of somebody, on the day on which the plan of the demo was signed. */
  public static SigningKey key(KeyHolder holder) {
    return Signing.newKey(holder, KeyAlgorithm.EC_P256, Instant.parse("2026-01-05T08:00:00Z"));
  }
}
