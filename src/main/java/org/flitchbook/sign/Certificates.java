package org.flitchbook.sign;

import java.io.ByteArrayInputStream;
import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.PublicKey;
import java.security.cert.CertificateEncodingException;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.security.interfaces.ECPublicKey;
import java.security.interfaces.RSAPublicKey;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Date;
import java.util.HexFormat;
import java.util.Optional;
import org.bouncycastle.asn1.x500.RDN;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x500.X500NameBuilder;
import org.bouncycastle.asn1.x500.style.BCStyle;
import org.bouncycastle.asn1.x500.style.IETFUtils;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.CertIOException;
import org.bouncycastle.cert.X509v3CertificateBuilder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.ContentSigner;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/** Makes certificates that sign themselves, and reads what a certificate says. */
final class Certificates {

  private static final int YEARS = 10;

  /** A serial number has at most 20 octets (RFC 5280, 4.1.2.2). */
  private static final int SERIAL_OCTETS = 16;

  private Certificates() {}

  static SigningKey make(Signing.KeyHolder holder, Signing.KeyAlgorithm algorithm, Instant from) {
    try {
      KeyPairGenerator generator = KeyPairGenerator.getInstance(algorithm.family);
      generator.initialize(algorithm.form);
      KeyPair pair = generator.generateKeyPair();
      ContentSigner signer =
          new JcaContentSignerBuilder(CadesSignature.algorithm(algorithm.family))
              .build(pair.getPrivate());
      X509v3CertificateBuilder certificate = builder(holder, pair.getPublic(), from);
      return new SigningKey(
          pair.getPrivate(),
          new JcaX509CertificateConverter().getCertificate(certificate.build(signer)));
    } catch (GeneralSecurityException | OperatorCreationException | CertIOException missing) {
      throw new IllegalStateException("this Java can't make a key", missing);
    }
  }

  private static X509v3CertificateBuilder builder(
      Signing.KeyHolder holder, PublicKey key, Instant from) throws CertIOException {
    Instant begin = from.truncatedTo(ChronoUnit.SECONDS);
    Instant end = begin.atOffset(ZoneOffset.UTC).plusYears(YEARS).toInstant();
    X500Name subject =
        new X500NameBuilder(BCStyle.INSTANCE)
            .addRDN(BCStyle.O, holder.establishment())
            .addRDN(BCStyle.CN, holder.name())
            .addRDN(BCStyle.INITIALS, holder.initials())
            .build();
    byte[] digest = Arrays.copyOf(sha256(key.getEncoded()), SERIAL_OCTETS);
    return new JcaX509v3CertificateBuilder(
            subject, new BigInteger(1, digest), Date.from(begin), Date.from(end), subject, key)
        .addExtension(Extension.basicConstraints, true, new BasicConstraints(false))
        .addExtension(
            Extension.keyUsage,
            true,
            new KeyUsage(KeyUsage.digitalSignature | KeyUsage.nonRepudiation))
        .addExtension(
            Extension.extendedKeyUsage,
            false,
            new ExtendedKeyUsage(KeyPurposeId.id_kp_documentSigning));
  }

  static CertificateInfo info(X509Certificate certificate) {
    PublicKey key = certificate.getPublicKey();
    return new CertificateInfo(
        name(certificate),
        HexFormat.of().formatHex(hash(certificate)),
        key.getAlgorithm() + ", " + bits(key) + " bits",
        certificate.getNotBefore().toInstant(),
        certificate.getNotAfter().toInstant());
  }

  static Optional<CertificateInfo> read(byte[] certificate) {
    try {
      return Optional.of(info(certificate(certificate)));
    } catch (CertificateException none) {
      return Optional.empty();
    }
  }

  static X509Certificate certificate(byte[] encoded) throws CertificateException {
    return (X509Certificate)
        CertificateFactory.getInstance("X.509")
            .generateCertificate(new ByteArrayInputStream(encoded));
  }

  static byte[] hash(X509Certificate certificate) {
    return sha256(encoded(certificate));
  }

  static byte[] encoded(X509Certificate certificate) {
    try {
      return certificate.getEncoded();
    } catch (CertificateEncodingException broken) {
      throw new IllegalStateException("a certificate that was read can be written", broken);
    }
  }

  private static String name(X509Certificate certificate) {
    X500Name subject = X500Name.getInstance(certificate.getSubjectX500Principal().getEncoded());
    RDN[] names = subject.getRDNs(BCStyle.CN);
    return names.length == 0
        ? subject.toString()
        : IETFUtils.valueToString(names[0].getFirst().getValue());
  }

  /** The length of a key; 0 for one of a family that is not used here. */
  static int bits(PublicKey key) {
    if (key instanceof RSAPublicKey rsa) {
      return rsa.getModulus().bitLength();
    }
    return key instanceof ECPublicKey ec ? ec.getParams().getOrder().bitLength() : 0;
  }

  static byte[] sha256(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException missing) {
      throw new AssertionError("every Java platform has SHA-256", missing);
    }
  }
}
