package org.demebook.peering;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.MessageDigest;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.util.Base64;

/**
 * The key pair with which the node's TLS port is reached, on the curve P-256, and the certificate that it made itself.
 *
 * @param store PKCS12, one entry
 * @param pin of the public key
 */
record TlsKey(byte[] store, String pin) {
    /** The form wants one; what keeps the key are the rights of its file. */
    static final String PASSWORD = "the-rights-of-the-file-keep-it";

    private static final String ENTRY = "tls";

    static TlsKey generate() throws GeneralSecurityException, IOException {
        var generator = KeyPairGenerator.getInstance("EC");
        generator.initialize(new ECGenParameterSpec("secp256r1"));
        var keys = generator.generateKeyPair();
        var certificate = SelfSigned.certificate("demebook", keys);
        var store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        store.setKeyEntry(ENTRY, keys.getPrivate(), PASSWORD.toCharArray(), new Certificate[] {certificate});
        var bytes = new ByteArrayOutputStream();
        store.store(bytes, PASSWORD.toCharArray());
        return new TlsKey(bytes.toByteArray(), pin(certificate));
    }

    static TlsKey of(byte[] pkcs12) throws GeneralSecurityException, IOException {
        var store = KeyStore.getInstance("PKCS12");
        store.load(new ByteArrayInputStream(pkcs12), PASSWORD.toCharArray());
        if (!(store.getCertificate(ENTRY) instanceof X509Certificate certificate) || !store.isKeyEntry(ENTRY)) {
            throw new GeneralSecurityException("it has no entry \"%s\" with a key and a certificate".formatted(ENTRY));
        }
        return new TlsKey(pkcs12, pin(certificate));
    }

    /** SHA-256 of the SubjectPublicKeyInfo in DER, as RFC 7469, 2.4 takes it, base64url without padding. */
    static String pin(X509Certificate certificate) throws GeneralSecurityException {
        var digest = MessageDigest.getInstance("SHA-256")
                .digest(certificate.getPublicKey().getEncoded());
        return Base64.getUrlEncoder().withoutPadding().encodeToString(digest);
    }

    @Override
    public String toString() {
        return "TLS key " + pin;
    }
}
