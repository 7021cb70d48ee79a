package org.demebook.peering;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.SecureRandom;
import java.security.Signature;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;

/**
 * A certificate that vouches for nothing but its own key: peers pin the key and look at nothing else in it. In DER (X.690), after
 * RFC 5280: version 3, no end of validity (99991231235959Z, section 4.1.2.5), no authority, for signatures alone.
 *
 * <p>The platform can read certificates and not write them; these few fields are not worth a library.
 */
final class SelfSigned {
    private static final int INTEGER = 0x02;
    private static final int BIT_STRING = 0x03;
    private static final int OCTET_STRING = 0x04;
    private static final int UTF8_STRING = 0x0c;
    private static final int GENERALIZED_TIME = 0x18;
    private static final int UTC_TIME = 0x17;
    private static final int SEQUENCE = 0x30;
    private static final int SET = 0x31;
    private static final int VERSION = 0xa0;
    private static final int EXTENSIONS = 0xa3;

    private static final byte[] TRUE = {0x01, 0x01, (byte) 0xff};
    private static final byte[] ECDSA_WITH_SHA256 = oid(0x2a, 0x86, 0x48, 0xce, 0x3d, 0x04, 0x03, 0x02);
    private static final byte[] COMMON_NAME = oid(0x55, 0x04, 0x03);
    private static final byte[] BASIC_CONSTRAINTS = oid(0x55, 0x1d, 0x13);
    private static final byte[] KEY_USAGE = oid(0x55, 0x1d, 0x0f);
    private static final byte[] DIGITAL_SIGNATURE = {0x03, 0x02, 0x07, (byte) 0x80};

    private SelfSigned() {}

    /** @param keys on an elliptic curve */
    static X509Certificate certificate(String commonName, KeyPair keys) throws GeneralSecurityException {
        var algorithm = der(SEQUENCE, ECDSA_WITH_SHA256);
        var name = der(
                SEQUENCE,
                der(SET, der(SEQUENCE, COMMON_NAME, der(UTF8_STRING, commonName.getBytes(StandardCharsets.UTF_8)))));
        var validity =
                der(SEQUENCE, der(UTC_TIME, ascii("200101000000Z")), der(GENERALIZED_TIME, ascii("99991231235959Z")));
        var toBeSigned = der(
                SEQUENCE,
                der(VERSION, der(INTEGER, new byte[] {2})),
                der(INTEGER, serial()),
                algorithm,
                name,
                validity,
                name,
                keys.getPublic().getEncoded(),
                der(
                        EXTENSIONS,
                        der(
                                SEQUENCE,
                                der(SEQUENCE, BASIC_CONSTRAINTS, TRUE, der(OCTET_STRING, der(SEQUENCE))),
                                der(SEQUENCE, KEY_USAGE, TRUE, der(OCTET_STRING, DIGITAL_SIGNATURE)))));
        var signature = Signature.getInstance("SHA256withECDSA");
        signature.initSign(keys.getPrivate());
        signature.update(toBeSigned);
        var whole = der(SEQUENCE, toBeSigned, algorithm, der(BIT_STRING, new byte[] {0}, signature.sign()));
        return (X509Certificate)
                CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(whole));
    }

    /** Positive, of at most 20 bytes (RFC 5280, 4.1.2.2). */
    private static byte[] serial() {
        return new BigInteger(127, new SecureRandom()).add(BigInteger.ONE).toByteArray();
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    private static byte[] oid(int... bytes) {
        var content = new byte[bytes.length];
        for (int i = 0; i < bytes.length; i++) {
            content[i] = (byte) bytes[i];
        }
        return der(0x06, content);
    }

    /** Tag, length in its shortest form, content (X.690, 8.1 and 10.1). */
    private static byte[] der(int tag, byte[]... parts) {
        var content = new ByteArrayOutputStream();
        for (var part : parts) {
            content.writeBytes(part);
        }
        var whole = new ByteArrayOutputStream();
        whole.write(tag);
        int length = content.size();
        if (length < 0x80) {
            whole.write(length);
        } else {
            var digits = BigInteger.valueOf(length).toByteArray();
            int from = digits[0] == 0 ? 1 : 0;
            whole.write(0x80 | digits.length - from);
            whole.write(digits, from, digits.length - from);
        }
        whole.writeBytes(content.toByteArray());
        return whole.toByteArray();
    }
}
