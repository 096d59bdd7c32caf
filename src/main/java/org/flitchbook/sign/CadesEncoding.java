package org.flitchbook.sign;

import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.Signature;
import java.security.cert.X509Certificate;
import java.util.Optional;
import org.bouncycastle.asn1.ASN1Encodable;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.ASN1Set;
import org.bouncycastle.asn1.DEROctetString;
import org.bouncycastle.asn1.DERSet;
import org.bouncycastle.asn1.cms.Attribute;
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

/**
 * The one form in which signatures are written and accepted: SHA-256, one certificate, one signer,
 * three signed attributes, in DER. What it doesn't take from outside, it leaves no choice about.
 */
final class CadesEncoding {

  private static final AlgorithmIdentifier SHA_256 =
      new AlgorithmIdentifier(NISTObjectIdentifiers.id_sha256);

  private final X509Certificate certificate;
  private final ASN1Encodable contentHash;

  CadesEncoding(X509Certificate certificate, byte[] contentHash) {
    this.certificate = certificate;
    this.contentHash = new DEROctetString(contentHash);
  }

  static byte[] sign(byte[] content, SigningKey key) {
    CadesEncoding form = new CadesEncoding(key.certificate(), Certificates.sha256(content));
    try {
      Signature signature = Signature.getInstance(algorithm(key.secret().getAlgorithm()));
      signature.initSign(key.secret());
      signature.update(der(form.attributes()));
      return form.with(signature.sign(), Optional.empty());
    } catch (GeneralSecurityException missing) {
      throw new IllegalStateException("this Java can't sign", missing);
    }
  }

  private ASN1Set attributes() {
    SigningCertificateV2 hash =
        new SigningCertificateV2(new ESSCertIDv2(Certificates.hash(certificate)));
    return new DERSet(
        new ASN1Encodable[] {
          attribute(CMSAttributes.contentType, CMSObjectIdentifiers.data),
          attribute(CMSAttributes.messageDigest, contentHash),
          attribute(PKCSObjectIdentifiers.id_aa_signingCertificateV2, hash)
        });
  }

  private static Attribute attribute(ASN1ObjectIdentifier type, ASN1Encodable value) {
    return new Attribute(type, new DERSet(value));
  }

  /**
   * The whole structure.
   *
   * @param stamp the answer of a time stamp server
   */
  byte[] with(byte[] signature, Optional<ASN1Encodable> stamp) {
    Certificate encoded = Certificate.getInstance(Certificates.encoded(certificate));
    SignerInfo signer =
        new SignerInfo(
            new SignerIdentifier(new IssuerAndSerialNumber(encoded)),
            SHA_256,
            attributes(),
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

  /** The name of the algorithm of a key of that family. */
  static String algorithm(String family) {
    return family.equals("RSA") ? "SHA256withRSA" : "SHA256withECDSA";
  }

  static byte[] der(ASN1Encodable structure) {
    try {
      return structure.toASN1Primitive().getEncoded(ASN1Encoding.DER);
    } catch (IOException impossible) {
      throw new IllegalStateException("writing in memory", impossible);
    }
  }
}
