package org.demebook.signing;

import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.SignatureException;
import java.security.spec.EdECPoint;
import java.security.spec.EdECPrivateKeySpec;
import java.security.spec.EdECPublicKeySpec;
import java.security.spec.NamedParameterSpec;

/** The Ed25519 of the JDK, which the rooms do not use: a second opinion. */
final class Jdk {
    private Jdk() {}

    static boolean verifies(byte[] key, byte[] message, byte[] signature) throws GeneralSecurityException {
        var verifier = Signature.getInstance("Ed25519");
        try {
            verifier.initVerify(publicKey(key));
            verifier.update(message);
            return verifier.verify(signature);
        } catch (SignatureException | java.security.InvalidKeyException e) {
            return false; // how it says no to what it cannot decode
        }
    }

    static byte[] sign(byte[] seed, byte[] message) throws GeneralSecurityException {
        var signer = Signature.getInstance("Ed25519");
        signer.initSign(privateKey(seed));
        signer.update(message);
        return signer.sign();
    }

    static PublicKey publicKey(byte[] key) throws GeneralSecurityException {
        var number = Edwards.ofLittleEndian(key);
        boolean xIsOdd = number.testBit(255);
        BigInteger y = number.clearBit(255);
        return KeyFactory.getInstance("Ed25519")
                .generatePublic(new EdECPublicKeySpec(NamedParameterSpec.ED25519, new EdECPoint(xIsOdd, y)));
    }

    static PrivateKey privateKey(byte[] seed) throws GeneralSecurityException {
        return KeyFactory.getInstance("Ed25519")
                .generatePrivate(new EdECPrivateKeySpec(NamedParameterSpec.ED25519, seed));
    }
}
