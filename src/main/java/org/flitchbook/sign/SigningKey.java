package org.flitchbook.sign;

import java.security.PrivateKey;
import java.security.cert.X509Certificate;

/** A person's key, opened. It says nothing of its secret. */
public record SigningKey(PrivateKey secret, X509Certificate certificate) {

  public CertificateInfo info() {
    return Certificates.info(certificate);
  }

  @Override
  public String toString() {
    return "the key " + info().fingerprint();
  }
}
