package org.flitchbook.sign;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.math.BigInteger;
import java.security.cert.CertificateException;
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
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampRequestGenerator;
import org.bouncycastle.tsp.TimeStampResponse;
import org.bouncycastle.tsp.TimeStampToken;

/**
 * Asks for time stamps and reads them (RFC 3161). A server's answer is kept in one form: servers
 * differ in what they add outside of their own signature; it is left out, so that no bit can be
 * changed there unnoticed.
 */
final class Timestamps {

  private static final int NONCE_OCTETS = 8;

  /** RFC 5652, 5.1: content that is not plain data, one signer named by issuer and number. */
  private static final ASN1Integer VERSION = new ASN1Integer(3);

  private Timestamps() {}

  static byte[] request(byte[] cms) {
    try {
      return question(CadesSignature.of(cms).signature).getEncoded();
    } catch (IOException broken) {
      throw new IllegalArgumentException("this is no signature", broken);
    }
  }

  /** The nonce comes from the signature, which differs each time. */
  private static TimeStampRequest question(byte[] signature) throws IOException {
    byte[] hash = Certificates.sha256(signature);
    TimeStampRequestGenerator generator = new TimeStampRequestGenerator();
    generator.setCertReq(true);
    BigInteger nonce = new BigInteger(1, Arrays.copyOf(Certificates.sha256(hash), NONCE_OCTETS));
    return generator.generate(TSPAlgorithms.SHA256, hash, nonce);
  }

  static byte[] add(byte[] cms, byte[] answer) throws TimestampException {
    try {
      CadesSignature signed = CadesSignature.of(cms);
      TimeStampResponse response = new TimeStampResponse(answer);
      response.validate(question(signed.signature));
      TimeStampToken token = response.getTimeStampToken();
      if (token == null) {
        throw new TimestampException(
            say(
                "sign.timestamp.refused",
                "the server refuses: {0}",
                String.valueOf(response.getStatusString())));
      }
      ASN1Encodable stamp = formed(token.toCMSSignedData().toASN1Structure(), server(token));
      read(stamp, signed.signature);
      return signed.with(stamp);
    } catch (IOException | TSPException broken) {
      throw new TimestampException(
          say("sign.timestamp.none", "the answer is no time stamp of this signature"), broken);
    }
  }

  static Verification.Timestamp read(ASN1Encodable token, byte[] signature)
      throws TimestampException {
    try {
      TimeStampToken stamp = new TimeStampToken(ContentInfo.getInstance(token));
      X509CertificateHolder server = server(stamp);
      stamp.validate(new JcaSimpleSignerInfoVerifierBuilder().build(server));
      CertificateInfo info = Certificates.info(Certificates.certificate(server.getEncoded()));
      refuseOther(stamp, Certificates.sha256(signature), isFormed(token, server));
      return new Verification.Timestamp(stamp.getTimeStampInfo().getGenTime().toInstant(), info);
    } catch (IOException
        | TSPException
        | CertificateException
        | OperatorCreationException
        | RuntimeException broken) {
      // Bouncy Castle throws exceptions of many kinds at a broken structure.
      throw new TimestampException(
          say("sign.timestamp.broken", "its time stamp is broken"), broken);
    }
  }

  private static void refuseOther(TimeStampToken stamp, byte[] imprint, boolean isFormed)
      throws TimestampException {
    if (!Arrays.equals(stamp.getTimeStampInfo().getMessageImprintDigest(), imprint)) {
      throw new TimestampException(
          say("sign.timestamp.other", "its time stamp is about something else"));
    }
    if (!isFormed) {
      throw new TimestampException(
          say(
              "sign.timestamp.form",
              "its time stamp is not in the form in which this program keeps it"));
    }
  }

  private static X509CertificateHolder server(TimeStampToken stamp) throws TimestampException {
    for (X509CertificateHolder each : stamp.getCertificates().getMatches(null)) {
      if (stamp.getSID().match(each)) {
        return each;
      }
    }
    throw new TimestampException(
        say("sign.timestamp.certificate", "its time stamp does not hold its server's certificate"));
  }

  /** A server's answer in the one form in which it is kept. */
  private static ContentInfo formed(ASN1Encodable token, X509CertificateHolder server) {
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

  private static boolean isFormed(ASN1Encodable token, X509CertificateHolder server) {
    SignedData data = SignedData.getInstance(ContentInfo.getInstance(token).getContent());
    SignerInfo signer = SignerInfo.getInstance(data.getSignerInfos().getObjectAt(0));
    return Arrays.equals(CadesSignature.der(formed(token, server)), CadesSignature.der(token))
        && isPlain(signer.getDigestAlgorithm())
        && isPlain(signer.getDigestEncryptionAlgorithm());
  }

  private static boolean isPlain(AlgorithmIdentifier algorithm) {
    return algorithm.getParameters() == null
        || algorithm.getParameters().toASN1Primitive() instanceof DERNull;
  }
}
