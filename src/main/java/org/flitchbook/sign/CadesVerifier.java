package org.flitchbook.sign;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.PublicKey;
import java.security.Signature;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bouncycastle.asn1.ASN1Encodable;
import org.flitchbook.message.Message;

/** Holds each part of a signature against what it should be. */
final class CadesVerifier {

  /** NIST SP 800-131A: 112 bits of security. */
  private static final int FEWEST_RSA_BITS = 2048;

  private static final int FEWEST_EC_BITS = 224;

  private final byte[] written;
  private final CadesParts parts;
  private final List<Message> faults = new ArrayList<>();

  private CadesVerifier(byte[] written, CadesParts parts) {
    this.written = written;
    this.parts = parts;
  }

  static Verification of(byte[] signature, byte[] content) {
    try {
      CadesParts parts = CadesParts.of(signature);
      return new CadesVerifier(signature, parts).check(Certificates.sha256(content));
    } catch (IOException none) {
      return Verification.broken(say("sign.unreadable", "it can't be read as a signature (CMS)"));
    }
  }

  private Verification check(byte[] contentHash) {
    demand(
        Arrays.equals(parts.digest, contentHash),
        say("sign.changed", "the bytes that it covers were changed"));
    demand(
        Arrays.equals(parts.certificateHash, Certificates.hash(parts.certificate)),
        say("sign.other-certificate", "the certificate in it is not the one that it names"));
    demand(
        isLongEnough(parts.certificate.getPublicKey()),
        say("sign.short-key", "its key is too short"));
    demand(isMade(), say("sign.other-key", "the key of its certificate did not make it"));
    CadesEncoding form = new CadesEncoding(parts.certificate, contentHash);
    demand(
        Arrays.equals(form.with(parts.signature, parts.timestamp), written),
        say("sign.other-form", "it is not in the form in which this program signs"));
    Optional<Timestamp> timestamp = parts.timestamp.flatMap(this::read);
    return new Verification(Optional.of(parts.info), faults, timestamp);
  }

  private void demand(boolean holds, Message fault) {
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
    PublicKey key = parts.certificate.getPublicKey();
    try {
      Signature check = Signature.getInstance(CadesSigner.algorithm(key.getAlgorithm()));
      check.initVerify(key);
      check.update(parts.signed);
      return check.verify(parts.signature);
    } catch (GeneralSecurityException broken) {
      return false;
    }
  }

  private Optional<Timestamp> read(ASN1Encodable token) {
    try {
      return Optional.of(Timestamps.read(token, parts.signature));
    } catch (TimestampException broken) {
      faults.add(broken.fault());
      return Optional.empty();
    }
  }
}
