package org.flitchbook.sign;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.util.Optional;
import org.bouncycastle.asn1.ASN1Encodable;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.ASN1OctetString;
import org.bouncycastle.asn1.ASN1Primitive;
import org.bouncycastle.asn1.ASN1Set;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.CMSAttributes;
import org.bouncycastle.asn1.cms.ContentInfo;
import org.bouncycastle.asn1.cms.SignedData;
import org.bouncycastle.asn1.cms.SignerInfo;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.x509.Certificate;
import org.jspecify.annotations.Nullable;

/** A signature taken apart, down to the last of its parts; believed in nothing yet. */
final class CadesParts {

  final X509Certificate certificate;
  final CertificateInfo info;
  final byte[] signature;

  /** The attributes that are signed, as bytes. */
  final byte[] signed;

  /** The hash of the content, as the signature states it. */
  final byte[] digest;

  /** The hash of the certificate, as the signature states it. */
  final byte[] certificateHash;

  /** The answer of a time stamp server. */
  final Optional<ASN1Encodable> timestamp;

  private CadesParts(Certificate certificate, SignerInfo signer) throws CertificateException {
    ASN1Set attributes = signer.getAuthenticatedAttributes();
    this.certificate = certificate(CadesEncoding.der(certificate));
    this.info = Certificates.info(this.certificate);
    this.signature = signer.getEncryptedDigest().getOctets();
    this.signed = CadesEncoding.der(attributes);
    this.digest =
        value(attributes, CMSAttributes.messageDigest)
            .map(hash -> ASN1OctetString.getInstance(hash).getOctets())
            .orElse(new byte[0]);
    this.certificateHash =
        value(attributes, PKCSObjectIdentifiers.id_aa_signingCertificateV2)
            .map(hash -> SigningCertificateV2.getInstance(hash).getCerts()[0].getCertHash())
            .orElse(new byte[0]);
    this.timestamp =
        value(
            signer.getUnauthenticatedAttributes(),
            PKCSObjectIdentifiers.id_aa_signatureTimeStampToken);
  }

  /**
   * Takes a signature apart.
   *
   * @throws IOException where it is none
   */
  static CadesParts of(byte[] written) throws IOException {
    try {
      ContentInfo outside = ContentInfo.getInstance(ASN1Primitive.fromByteArray(written));
      // Parts are parsed when they are asked for; this asks for all of them.
      CadesEncoding.der(outside);
      SignedData data = SignedData.getInstance(outside.getContent());
      ASN1Set certificates = data.getCertificates();
      if (certificates == null || certificates.size() != 1 || data.getSignerInfos().size() != 1) {
        throw new IOException("not just one signer with one certificate");
      }
      return new CadesParts(
          Certificate.getInstance(certificates.getObjectAt(0)),
          SignerInfo.getInstance(data.getSignerInfos().getObjectAt(0)));
    } catch (CertificateException | RuntimeException broken) {
      // Bouncy Castle throws exceptions of many kinds at a broken structure.
      throw new IOException("no signature", broken);
    }
  }

  static X509Certificate certificate(byte[] der) throws CertificateException {
    return (X509Certificate)
        CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(der));
  }

  private static Optional<ASN1Encodable> value(
      @Nullable ASN1Set attributes, ASN1ObjectIdentifier type) {
    if (attributes != null) {
      for (ASN1Encodable each : attributes) {
        Attribute attribute = Attribute.getInstance(each);
        if (attribute.getAttrType().equals(type) && attribute.getAttrValues().size() > 0) {
          return Optional.of(attribute.getAttributeValues()[0]);
        }
      }
    }
    return Optional.empty();
  }
}
