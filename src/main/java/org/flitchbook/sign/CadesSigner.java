package org.flitchbook.sign;

import java.security.GeneralSecurityException;
import java.security.Signature;
import java.util.Optional;

/** Signs as PAdES baseline B wants it. */
final class CadesSigner {

  private CadesSigner() {}

  static byte[] sign(byte[] content, SigningKey key) {
    CadesEncoding form = new CadesEncoding(key.certificate(), Certificates.sha256(content));
    try {
      Signature signature = Signature.getInstance(algorithm(key.secret().getAlgorithm()));
      signature.initSign(key.secret());
      signature.update(form.signed());
      return form.with(signature.sign(), Optional.empty());
    } catch (GeneralSecurityException missing) {
      throw new IllegalStateException("this Java can't sign", missing);
    }
  }

  static String algorithm(String family) {
    return family.equals("RSA") ? "SHA256withRSA" : "SHA256withECDSA";
  }
}
