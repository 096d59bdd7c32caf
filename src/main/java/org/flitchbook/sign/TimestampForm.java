package org.flitchbook.sign;

import java.util.Arrays;
import org.bouncycastle.asn1.ASN1Encodable;
import org.bouncycastle.asn1.ASN1Integer;
import org.bouncycastle.asn1.ASN1OctetString;
import org.bouncycastle.asn1.DERNull;
import org.bouncycastle.asn1.DEROctetString;
import org.bouncycastle.asn1.DERSet;
import org.bouncycastle.asn1.cms.CMSObjectIdentifiers;
import org.bouncycastle.asn1.cms.ContentInfo;
import org.bouncycastle.asn1.cms.IssuerAndSerialNumber;
import org.bouncycastle.asn1.cms.SignedData;
import org.bouncycastle.asn1.cms.SignerIdentifier;
import org.bouncycastle.asn1.cms.SignerInfo;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.cert.X509CertificateHolder;

/**
 * The one form in which a server's answer is kept. Servers differ in what they add outside of their
 * own signature; it is left out, so that no bit can be changed there unnoticed.
 */
final class TimestampForm {

  /** RFC 5652, 5.1: content that is not plain data, one signer named by issuer and number. */
  private static final ASN1Integer VERSION = new ASN1Integer(3);

  private TimestampForm() {}

  static ContentInfo of(ASN1Encodable token, X509CertificateHolder server) {
    SignedData data = SignedData.getInstance(ContentInfo.getInstance(token).getContent());
    SignerInfo signer = SignerInfo.getInstance(data.getSignerInfos().getObjectAt(0));
    SignerInfo bare =
        new SignerInfo(
            new SignerIdentifier(new IssuerAndSerialNumber(server.toASN1Structure())),
            signer.getDigestAlgorithm(),
            signer.getAuthenticatedAttributes(),
            signer.getDigestEncryptionAlgorithm(),
            signer.getEncryptedDigest(),
            null);
    SignedData normal =
        new SignedData(
            VERSION,
            new DERSet(signer.getDigestAlgorithm()),
            content(data.getEncapContentInfo()),
            new DERSet(server.toASN1Structure()),
            null,
            new DERSet(bare));
    return new ContentInfo(CMSObjectIdentifiers.signedData, normal);
  }

  private static ContentInfo content(ContentInfo said) {
    byte[] octets = ASN1OctetString.getInstance(said.getContent()).getOctets();
    return new ContentInfo(said.getContentType(), new DEROctetString(octets));
  }

  static boolean holds(ASN1Encodable token, X509CertificateHolder server) {
    SignedData data = SignedData.getInstance(ContentInfo.getInstance(token).getContent());
    SignerInfo signer = SignerInfo.getInstance(data.getSignerInfos().getObjectAt(0));
    return Arrays.equals(CadesEncoding.der(of(token, server)), CadesEncoding.der(token))
        && isPlain(signer.getDigestAlgorithm())
        && isPlain(signer.getDigestEncryptionAlgorithm());
  }

  private static boolean isPlain(AlgorithmIdentifier algorithm) {
    return algorithm.getParameters() == null
        || algorithm.getParameters().toASN1Primitive() instanceof DERNull;
  }
}
