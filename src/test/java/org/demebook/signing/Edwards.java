package org.demebook.signing;

import static java.math.BigInteger.ONE;
import static java.math.BigInteger.TWO;
import static java.math.BigInteger.ZERO;

import java.math.BigInteger;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.List;

/**
 * The curve edwards25519 by its definition (RFC 8032, 5.1), in big integers: slow, and able to make what an honest library never makes.
 *
 * @param x affine, as y
 */
record Edwards(BigInteger x, BigInteger y) {
    static final BigInteger P = TWO.pow(255).subtract(BigInteger.valueOf(19));
    static final BigInteger L = TWO.pow(252).add(new BigInteger("27742317777372353535851937790883648493"));
    static final Edwards NEUTRAL = new Edwards(ZERO, ONE);
    static final BigInteger D = BigInteger.valueOf(-121665)
            .multiply(BigInteger.valueOf(121666).modInverse(P))
            .mod(P);
    static final Edwards BASE = of(
            BigInteger.valueOf(4).multiply(BigInteger.valueOf(5).modInverse(P)).mod(P));

    /** The point of that y with an even x; null if there is none. */
    static Edwards of(BigInteger y) {
        var yy = y.multiply(y);
        var xx =
                yy.subtract(ONE).multiply(D.multiply(yy).add(ONE).modInverse(P)).mod(P);
        var x = xx.modPow(P.add(BigInteger.valueOf(3)).shiftRight(3), P);
        if (!x.multiply(x).mod(P).equals(xx)) {
            x = x.multiply(TWO.modPow(P.subtract(ONE).shiftRight(2), P)).mod(P);
        }
        if (!x.multiply(x).mod(P).equals(xx)) {
            return null;
        }
        return new Edwards(x.testBit(0) ? P.subtract(x) : x, y);
    }

    Edwards plus(Edwards other) {
        var product =
                D.multiply(x).multiply(other.x).multiply(y).multiply(other.y).mod(P);
        var newX = x.multiply(other.y)
                .add(y.multiply(other.x))
                .multiply(ONE.add(product).modInverse(P))
                .mod(P);
        var newY = y.multiply(other.y)
                .add(x.multiply(other.x))
                .multiply(ONE.subtract(product).modInverse(P))
                .mod(P);
        return new Edwards(newX, newY);
    }

    Edwards times(BigInteger factor) {
        var result = NEUTRAL;
        for (int bit = factor.bitLength() - 1; bit >= 0; bit--) {
            result = result.plus(result);
            if (factor.testBit(bit)) {
                result = result.plus(this);
            }
        }
        return result;
    }

    byte[] encoded() {
        return littleEndian(x.testBit(0) ? y.setBit(255) : y);
    }

    /** The eight points whose eightfold is the neutral element, which comes first. */
    static List<Edwards> smallOrder() {
        for (var y = BigInteger.valueOf(3); ; y = y.add(ONE)) {
            var point = of(y);
            var torsion = point == null ? NEUTRAL : point.times(L);
            if (!torsion.times(BigInteger.valueOf(4)).equals(NEUTRAL)) { // of order 8: it generates all
                List<Edwards> all = new ArrayList<>(List.of(NEUTRAL));
                for (var next = torsion; !next.equals(NEUTRAL); next = next.plus(torsion)) {
                    all.add(next);
                }
                return all;
            }
        }
    }

    static byte[] littleEndian(BigInteger number) {
        byte[] bytes = new byte[32];
        for (int i = 0; i < 32; i++) {
            bytes[i] = number.shiftRight(8 * i).byteValue();
        }
        return bytes;
    }

    static BigInteger ofLittleEndian(byte[] bytes) {
        var number = ZERO;
        for (int i = 0; i < bytes.length; i++) {
            number = number.or(BigInteger.valueOf(bytes[i] & 0xff).shiftLeft(8 * i));
        }
        return number;
    }

    /** SHA-512 of all parts, as a number modulo the order. */
    static BigInteger hash(byte[]... parts) {
        try {
            var digest = MessageDigest.getInstance("SHA-512");
            for (byte[] part : parts) {
                digest.update(part);
            }
            return ofLittleEndian(digest.digest()).mod(L);
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError(e);
        }
    }
}
