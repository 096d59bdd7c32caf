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
import org.jspecify.annotations.Nullable;

/** A signature taken apart, believed in nothing yet. */
record CadesParts(X509Certificate certificate, SignerInfo signer) {

  static CadesParts of(byte[] written) throws IOException, CertificateException {
    ContentInfo info = ContentInfo.getInstance(ASN1Primitive.fromByteArray(written));
    SignedData data = SignedData.getInstance(info.getContent());
    ASN1Set certificates = data.getCertificates();
    if (certificates == null || certificates.size() != 1 || data.getSignerInfos().size() != 1) {
      throw new IllegalArgumentException("not just one signer with one certificate");
    }
    return new CadesParts(
        certificate(CadesEncoding.der(certificates.getObjectAt(0))),
        SignerInfo.getInstance(data.getSignerInfos().getObjectAt(0)));
  }

  static X509Certificate certificate(byte[] der) throws CertificateException {
    return (X509Certificate)
        CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(der));
  }

  byte[] signature() {
    return signer.getEncryptedDigest().getOctets();
  }

  /** The attributes that are signed, as bytes. */
  byte[] signed() {
    return CadesEncoding.der(signer.getAuthenticatedAttributes());
  }

  /** The hash of the content, as the signature states it. */
  byte[] digest() {
    return value(signer.getAuthenticatedAttributes(), CMSAttributes.messageDigest)
        .map(hash -> ASN1OctetString.getInstance(hash).getOctets())
        .orElse(new byte[0]);
  }

  /** The hash of the certificate, as the signature states it. */
  byte[] certificateHash() {
    return value(
            signer.getAuthenticatedAttributes(), PKCSObjectIdentifiers.id_aa_signingCertificateV2)
        .map(hash -> SigningCertificateV2.getInstance(hash).getCerts()[0].getCertHash())
        .orElse(new byte[0]);
  }

  /** The answer of a time stamp server. */
  Optional<ASN1Encodable> stamp() {
    return value(
        signer.getUnauthenticatedAttributes(), PKCSObjectIdentifiers.id_aa_signatureTimeStampToken);
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
