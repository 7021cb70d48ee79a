package org.demebook.peering;

import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.cert.CertificateException;
import java.security.cert.X509Certificate;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLEngine;
import javax.net.ssl.TrustManager;
import javax.net.ssl.X509ExtendedTrustManager;
import org.jspecify.annotations.Nullable;

/**
 * Trusts one public key, whatever else the certificate says: no authority, no name, no dates. That the other side has the private
 * half, TLS itself sees to. An extended manager, so that the platform adds no check of host names.
 */
final class PinTrust extends X509ExtendedTrustManager {
    private final @Nullable String pin;

    /** The server has another key. */
    static final class WrongPin extends CertificateException {
        private static final long serialVersionUID = 1;

        WrongPin(String message) {
            super(message);
        }
    }

    private PinTrust(@Nullable String pin) {
        this.pin = pin;
    }

    static SSLContext only(String pin) {
        return context(new PinTrust(pin));
    }

    /** For the first contact alone: whoever calls this compares the key afterwards. */
    static SSLContext any() {
        return context(new PinTrust(null));
    }

    private static SSLContext context(TrustManager trust) {
        try {
            var context = SSLContext.getInstance("TLSv1.3");
            context.init(null, new TrustManager[] {trust}, null);
            return context;
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private void check(X509Certificate[] chain) throws CertificateException {
        if (pin == null) {
            return;
        }
        String seen;
        try {
            seen = TlsKey.pin(chain[0]);
        } catch (GeneralSecurityException e) {
            throw new CertificateException(e);
        }
        if (!MessageDigest.isEqual(bytes(seen), bytes(pin))) {
            throw new WrongPin("its TLS key is %s, pinned is %s".formatted(seen, pin));
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    @Override
    public void checkServerTrusted(X509Certificate[] chain, String authType, SSLEngine engine)
            throws CertificateException {
        check(chain);
    }

    @Override
    public void checkServerTrusted(X509Certificate[] chain, String authType, Socket socket)
            throws CertificateException {
        check(chain);
    }

    @Override
    public void checkServerTrusted(X509Certificate[] chain, String authType) throws CertificateException {
        check(chain);
    }

    @Override
    public void checkClientTrusted(X509Certificate[] chain, String authType, SSLEngine engine)
            throws CertificateException {
        throw new CertificateException("for servers alone");
    }

    @Override
    public void checkClientTrusted(X509Certificate[] chain, String authType, Socket socket)
            throws CertificateException {
        throw new CertificateException("for servers alone");
    }

    @Override
    public void checkClientTrusted(X509Certificate[] chain, String authType) throws CertificateException {
        throw new CertificateException("for servers alone");
    }

    @Override
    public X509Certificate[] getAcceptedIssuers() {
        return new X509Certificate[0];
    }
}
