package org.flitchbook.sign;

import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.PublicKey;
import java.security.Signature;
import java.security.cert.CertificateException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bouncycastle.asn1.ASN1Encodable;

/** Holds each part of a signature against what it should be. */
final class CadesVerifier {

  /** NIST SP 800-131A: 112 bits of security. */
  private static final int FEWEST_RSA_BITS = 2048;

  private static final int FEWEST_EC_BITS = 224;

  private final byte[] written;
  private final CadesParts parts;
  private final List<String> faults = new ArrayList<>();

  private CadesVerifier(byte[] written, CadesParts parts) {
    this.written = written;
    this.parts = parts;
  }

  static Verification of(byte[] signature, byte[] content) {
    try {
      CadesParts parts = CadesParts.of(signature);
      return new CadesVerifier(signature, parts).check(Certificates.sha256(content));
    } catch (IOException | CertificateException | RuntimeException broken) {
      // Bouncy Castle tells broken structures by exceptions of many kinds.
      return Verification.broken("it can't be read as a signature (CMS)");
    }
  }

  private Verification check(byte[] contentHash) {
    CertificateInfo card = Certificates.card(parts.certificate());
    demand(Arrays.equals(parts.digest(), contentHash), "the bytes that it covers were changed");
    demand(
        Arrays.equals(parts.certificateHash(), Certificates.hash(parts.certificate())),
        "the certificate in it is not the one that it names");
    demand(isLongEnough(parts.certificate().getPublicKey()), "its key is too short");
    demand(isMade(), "the key of its certificate did not make it");
    CadesEncoding form = new CadesEncoding(parts.certificate(), contentHash);
    demand(
        Arrays.equals(form.with(parts.signature(), parts.stamp()), written),
        "it is not in the form in which this program signs");
    Optional<Timestamp> stamp = parts.stamp().flatMap(this::read);
    return new Verification(Optional.of(card), faults, stamp);
  }

  private void demand(boolean holds, String fault) {
    if (!holds) {
      faults.add(fault);
    }
  }

  private static boolean isLongEnough(PublicKey key) {
    boolean rsa = key.getAlgorithm().equals("RSA");
    return Certificates.bits(key) >= (rsa ? FEWEST_RSA_BITS : FEWEST_EC_BITS);
  }

  /** Whether the key signed the attributes as they stand, whatever they say. */
  private boolean isMade() {
    PublicKey key = parts.certificate().getPublicKey();
    try {
      Signature check = Signature.getInstance(CadesSigner.algorithm(key.getAlgorithm()));
      check.initVerify(key);
      check.update(parts.signed());
      return check.verify(parts.signature());
    } catch (GeneralSecurityException broken) {
      return false;
    }
  }

  private Optional<Timestamp> read(ASN1Encodable token) {
    try {
      return Optional.of(Timestamps.read(token, parts.signature()));
    } catch (TimestampException broken) {
      faults.add(broken.getMessage());
      return Optional.empty();
    }
  }
}
