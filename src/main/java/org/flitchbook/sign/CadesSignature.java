package org.flitchbook.sign;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.PublicKey;
import java.security.Signature;
import java.security.cert.CertificateException;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bouncycastle.asn1.ASN1Encodable;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.ASN1OctetString;
import org.bouncycastle.asn1.ASN1Primitive;
import org.bouncycastle.asn1.ASN1Set;
import org.bouncycastle.asn1.DEROctetString;
import org.bouncycastle.asn1.DERSet;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.cms.CMSAttributes;
import org.bouncycastle.asn1.cms.CMSObjectIdentifiers;
import org.bouncycastle.asn1.cms.ContentInfo;
import org.bouncycastle.asn1.cms.IssuerAndSerialNumber;
import org.bouncycastle.asn1.cms.SignedData;
import org.bouncycastle.asn1.cms.SignerIdentifier;
import org.bouncycastle.asn1.cms.SignerInfo;
import org.bouncycastle.asn1.ess.ESSCertIDv2;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.Certificate;
import org.bouncycastle.operator.DefaultSignatureAlgorithmIdentifierFinder;
import org.flitchbook.message.Message;

/**
 * A signature in the one form in which signatures are written and accepted: SHA-256, one
 * certificate, one signer, three signed attributes, in DER. What it doesn't take from outside, it
 * leaves no choice about. A signature that was taken apart is believed in nothing: each part is
 * held against what it should be.
 */
final class CadesSignature {

  /** NIST SP 800-131A: 112 bits of security. */
  private static final int FEWEST_RSA_BITS = 2048;

  private static final int FEWEST_EC_BITS = 224;

  private static final AlgorithmIdentifier SHA_256 =
      new AlgorithmIdentifier(NISTObjectIdentifiers.id_sha256);

  final X509Certificate certificate;
  final byte[] signature;
  private final CertificateInfo signer;

  /** The hash of the content, as the signature states it. */
  final byte[] digest;

  /** The attributes that are signed, as bytes. */
  private final byte[] signed;

  /** The hash of the certificate, as the signature states it. */
  private final byte[] certificateHash;

  /** The answer of a time stamp server. */
  private final Optional<ASN1Encodable> timestamp;

  private final byte[] written;

  private CadesSignature(byte[] written, Certificate certificate, SignerInfo made)
      throws CertificateException {
    ASN1Set attributes = made.getAuthenticatedAttributes();
    this.written = written;
    this.certificate = Certificates.certificate(der(certificate));
    this.signer = Certificates.info(this.certificate);
    this.signature = made.getEncryptedDigest().getOctets();
    this.signed = der(attributes);
    this.digest =
        value(attributes, CMSAttributes.messageDigest)
            .map(hash -> ASN1OctetString.getInstance(hash).getOctets())
            .orElse(new byte[0]);
    this.certificateHash =
        value(attributes, PKCSObjectIdentifiers.id_aa_signingCertificateV2)
            .map(hash -> SigningCertificateV2.getInstance(hash).getCerts()[0].getCertHash())
            .orElse(new byte[0]);
    this.timestamp =
        Optional.ofNullable(made.getUnauthenticatedAttributes())
            .flatMap(
                unsigned -> value(unsigned, PKCSObjectIdentifiers.id_aa_signatureTimeStampToken));
  }

  /**
   * Takes a signature apart.
   *
   * @throws IOException where it is none
   */
  static CadesSignature of(byte[] written) throws IOException {
    try {
      ContentInfo outside = ContentInfo.getInstance(ASN1Primitive.fromByteArray(written));
      // Parts are parsed when they are asked for; this asks for all of them.
      der(outside);
      SignedData data = SignedData.getInstance(outside.getContent());
      ASN1Set certificates = data.getCertificates();
      if (certificates == null || certificates.size() != 1 || data.getSignerInfos().size() != 1) {
        throw new IOException("not just one signer with one certificate");
      }
      return new CadesSignature(
          written,
          Certificate.getInstance(certificates.getObjectAt(0)),
          SignerInfo.getInstance(data.getSignerInfos().getObjectAt(0)));
    } catch (CertificateException | RuntimeException broken) {
      // Bouncy Castle throws exceptions of many kinds at a broken structure.
      throw new IOException("no signature", broken);
    }
  }

  private static Optional<ASN1Encodable> value(ASN1Set attributes, ASN1ObjectIdentifier type) {
    return Optional.ofNullable(new AttributeTable(attributes).get(type))
        .filter(attribute -> attribute.getAttrValues().size() > 0)
        .map(attribute -> attribute.getAttrValues().getObjectAt(0));
  }

  static Verification verify(byte[] signature, byte[] content) {
    try {
      return of(signature).verify(Certificates.sha256(content));
    } catch (IOException none) {
      Message fault = say("sign.unreadable", "it can't be read as a signature (CMS)");
      return new Verification(Optional.empty(), List.of(fault), Optional.empty());
    }
  }

  private Verification verify(byte[] contentHash) {
    List<Message> faults = new ArrayList<>();
    if (!Arrays.equals(digest, contentHash)) {
      faults.add(say("sign.changed", "the bytes that it covers were changed"));
    }
    if (!Arrays.equals(certificateHash, Certificates.hash(certificate))) {
      faults.add(
          say("sign.other-certificate", "the certificate in it is not the one that it names"));
    }
    if (!isLongEnough(certificate.getPublicKey())) {
      faults.add(say("sign.short-key", "its key is too short"));
    }
    if (!isMade()) {
      faults.add(say("sign.other-key", "the key of its certificate did not make it"));
    }
    if (!Arrays.equals(encoded(certificate, contentHash, signature, timestamp), written)) {
      faults.add(say("sign.other-form", "it is not in the form in which this program signs"));
    }
    Optional<Verification.Timestamp> time = timestamp.flatMap(token -> read(token, faults));
    return new Verification(Optional.of(signer), faults, time);
  }

  private static boolean isLongEnough(PublicKey key) {
    boolean rsa = key.getAlgorithm().equals("RSA");
    return Certificates.bits(key) >= (rsa ? FEWEST_RSA_BITS : FEWEST_EC_BITS);
  }

  /** Whether the key signed the attributes as they stand, whatever they say. */
  private boolean isMade() {
    PublicKey key = certificate.getPublicKey();
    try {
      Signature check = Signature.getInstance(algorithm(key.getAlgorithm()));
      check.initVerify(key);
      check.update(signed);
      return check.verify(signature);
    } catch (GeneralSecurityException broken) {
      return false;
    }
  }

  private Optional<Verification.Timestamp> read(ASN1Encodable token, List<Message> faults) {
    try {
      return Optional.of(Timestamps.read(token, signature));
    } catch (TimestampException broken) {
      faults.add(broken.fault());
      return Optional.empty();
    }
  }

  static byte[] sign(byte[] content, SigningKey key) {
    byte[] hash = Certificates.sha256(content);
    try {
      Signature signature = Signature.getInstance(algorithm(key.secret().getAlgorithm()));
      signature.initSign(key.secret());
      signature.update(der(attributes(key.certificate(), hash)));
      return encoded(key.certificate(), hash, signature.sign(), Optional.empty());
    } catch (GeneralSecurityException missing) {
      throw new IllegalStateException("this Java can't sign", missing);
    }
  }

  /** The name of the algorithm of a key of that family. */
  static String algorithm(String family) {
    return family.equals("RSA") ? "SHA256withRSA" : "SHA256withECDSA";
  }

  /** The same signature with a time stamp server's answer in it. */
  byte[] with(ASN1Encodable stamp) {
    return encoded(certificate, digest, signature, Optional.of(stamp));
  }

  private static byte[] encoded(
      X509Certificate certificate,
      byte[] contentHash,
      byte[] signature,
      Optional<ASN1Encodable> stamp) {
    Certificate encoded = Certificate.getInstance(Certificates.encoded(certificate));
    SignerInfo signer =
        new SignerInfo(
            new SignerIdentifier(new IssuerAndSerialNumber(encoded)),
            SHA_256,
            attributes(certificate, contentHash),
            new DefaultSignatureAlgorithmIdentifierFinder()
                .find(algorithm(certificate.getPublicKey().getAlgorithm())),
            new DEROctetString(signature),
            stamp
                .map(token -> attribute(PKCSObjectIdentifiers.id_aa_signatureTimeStampToken, token))
                .map(DERSet::new)
                .orElse(null));
    ContentInfo outside = new ContentInfo(CMSObjectIdentifiers.data, null);
    SignedData data =
        new SignedData(new DERSet(SHA_256), outside, new DERSet(encoded), null, new DERSet(signer));
    return der(new ContentInfo(CMSObjectIdentifiers.signedData, data));
  }

  private static ASN1Set attributes(X509Certificate certificate, byte[] contentHash) {
    SigningCertificateV2 hash =
        new SigningCertificateV2(new ESSCertIDv2(Certificates.hash(certificate)));
    return new DERSet(
        new ASN1Encodable[] {
          attribute(CMSAttributes.contentType, CMSObjectIdentifiers.data),
          attribute(CMSAttributes.messageDigest, new DEROctetString(contentHash)),
          attribute(PKCSObjectIdentifiers.id_aa_signingCertificateV2, hash)
        });
  }

  private static Attribute attribute(ASN1ObjectIdentifier type, ASN1Encodable value) {
    return new Attribute(type, new DERSet(value));
  }

  static byte[] der(ASN1Encodable structure) {
    try {
      return structure.toASN1Primitive().getEncoded(ASN1Encoding.DER);
    } catch (IOException impossible) {
      throw new IllegalStateException("writing in memory", impossible);
    }
  }
}
