package org.demebook.signing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.security.GeneralSecurityException;
import java.util.Random;
import org.bouncycastle.math.ec.rfc8032.Ed25519;
import org.demebook.Thorough;
import org.demebook.signing.Malformed.Fault;
import org.junit.jupiter.api.Test;

/**
 * That every node decides alike about a signature, whatever library it verifies with. Judges: the JDK, which recomputes with the
 * whole scalar and no cofactor, and the curve by its definition ({@link Edwards}). The ways to make libraries disagree are
 * those of Chalkias, Garillot, Nikolaenko, "Taming the many EdDSAs" (2020), from memory.
 */
class OneDecisionTest {
    private static final long SEED = 20261128;

    private final Random random = new Random(SEED);

    @Test
    void honest_signatures_are_those_of_the_jdk() throws GeneralSecurityException {
        for (int i = 0; i < Thorough.size("demebook.signatures", 200, 5_000); i++) {
            var key = SigningKey.ofSeed(bytes(32));
            byte[] message = bytes(random.nextInt(300));
            assertThat(key.sign(message)).as("seed %d", SEED).isEqualTo(Jdk.sign(key.seed(), message));
            assertThat(decided(key.verifyingKey(), message, key.sign(message))).isTrue();
        }
    }

    @Test
    void the_curve_of_these_tests_signs_as_the_standard_does() {
        var key = SigningKey.ofSeed(bytes(32));
        var signer = new Cheat(BigInteger.valueOf(random.nextLong()), new byte[] {1});
        assertThat(VerifyingKey.of(signer.key).verifies(signer.message, signer.signature(Edwards.NEUTRAL)))
                .isTrue();
        assertThat(key.verifyingKey().verifies(signer.message, signer.signature(Edwards.NEUTRAL)))
                .isFalse();
    }

    @Test
    void a_changed_bit_anywhere_is_refused_by_both() throws GeneralSecurityException {
        var key = SigningKey.ofSeed(bytes(32));
        byte[] message = bytes(20);
        byte[] signature = key.sign(message);
        for (int bit = 0; bit < 8 * signature.length; bit++) {
            signature[bit / 8] ^= (byte) (1 << bit % 8);
            assertThat(decided(key.verifyingKey(), message, signature))
                    .as("bit %d", bit)
                    .isFalse();
            signature[bit / 8] ^= (byte) (1 << bit % 8);
        }
        message[3]++;
        assertThat(decided(key.verifyingKey(), message, signature)).isFalse();
    }

    @Test
    void a_second_half_beyond_the_order_is_refused_by_both() throws GeneralSecurityException {
        // RFC 8032, 5.1.7: S in [0, L)
        for (int i = 0; i < 20; i++) {
            var key = SigningKey.ofSeed(bytes(32));
            byte[] message = bytes(10);
            byte[] signature = key.sign(message);
            var s = Edwards.ofLittleEndian(java.util.Arrays.copyOfRange(signature, 32, 64));
            for (int times = 1; times <= 14; times++) {
                byte[] beyond =
                        join(signature, Edwards.littleEndian(s.add(Edwards.L.multiply(BigInteger.valueOf(times)))));
                assertThat(decided(key.verifyingKey(), message, beyond)).isFalse();
            }
        }
    }

    @Test
    void a_first_half_outside_the_prime_order_group_is_refused_by_both_though_the_library_alone_takes_some()
            throws GeneralSecurityException {
        int takenByLibraryAlone = 0;
        for (var torsion : Edwards.smallOrder().subList(1, 8)) {
            for (int i = 0; i < 12; i++) {
                var cheat = new Cheat(new BigInteger(250, random), bytes(8));
                byte[] signature = cheat.signature(torsion);
                takenByLibraryAlone += Ed25519.verify(signature, 0, cheat.key, 0, cheat.message, 0, 8) ? 1 : 0;
                assertThat(decided(VerifyingKey.of(cheat.key), cheat.message, signature))
                        .isFalse();
            }
        }
        assertThat(takenByLibraryAlone).as("why Curve looks at the first half").isPositive();
    }

    @Test
    void a_small_first_half_is_decided_alike() throws GeneralSecurityException {
        for (var torsion : Edwards.smallOrder()) {
            for (int i = 0; i < 8; i++) {
                var cheat = new Cheat(new BigInteger(250, random), bytes(8));
                byte[] first = torsion.encoded();
                byte[] signature = join(first, Edwards.littleEndian(cheat.secondHalf(BigInteger.ZERO, first)));
                assertThat(decided(VerifyingKey.of(cheat.key), cheat.message, signature))
                        .isEqualTo(torsion.equals(Edwards.NEUTRAL));
            }
        }
    }

    @Test
    void a_first_half_in_another_encoding_is_refused_by_both() throws GeneralSecurityException {
        var cheat = new Cheat(new BigInteger(250, random), bytes(8));
        // the neutral element has y = 1: also p + 1, and with the sign of an x that is 0
        for (var y : new BigInteger[] {
            Edwards.P.add(BigInteger.ONE),
            BigInteger.ONE.setBit(255),
            Edwards.P.add(BigInteger.ONE).setBit(255)
        }) {
            byte[] first = Edwards.littleEndian(y);
            byte[] signature = join(first, Edwards.littleEndian(cheat.secondHalf(BigInteger.ZERO, first)));
            assertThat(decided(VerifyingKey.of(cheat.key), cheat.message, signature))
                    .isFalse();
        }
    }

    @Test
    void keys_outside_the_prime_order_group_are_no_keys() {
        var honest = new Cheat(new BigInteger(250, random), new byte[0]).point;
        for (var torsion : Edwards.smallOrder()) {
            noKey(torsion.encoded());
            if (!torsion.equals(Edwards.NEUTRAL)) {
                noKey(honest.plus(torsion).encoded());
            }
        }
        assertThat(VerifyingKey.of(honest.encoded()).encoded()).isEqualTo(honest.encoded());
    }

    @Test
    void keys_in_another_encoding_are_no_keys() {
        for (int beyond = 0; beyond < 19; beyond++) {
            var y = Edwards.P.add(BigInteger.valueOf(beyond));
            noKey(Edwards.littleEndian(y));
            noKey(Edwards.littleEndian(y.setBit(255)));
        }
        noKey(Edwards.littleEndian(BigInteger.ONE.setBit(255))); // x = 0 has no sign
        noKey(Edwards.littleEndian(Edwards.P.subtract(BigInteger.ONE).setBit(255)));
    }

    @Test
    void what_is_no_point_is_no_key() {
        int none = 0;
        for (int i = 0; i < 40; i++) {
            var y = new BigInteger(254, random);
            if (Edwards.of(y) == null) {
                none++;
                noKey(Edwards.littleEndian(y));
            }
        }
        assertThat(none).isPositive();
    }

    private static void noKey(byte[] encoded) {
        assertThatThrownBy(() -> VerifyingKey.of(encoded))
                .isInstanceOfSatisfying(
                        Malformed.class, e -> assertThat(e.fault()).isEqualTo(Fault.WRONG_KEY));
    }

    /** Our decision, once it is the JDK's. */
    private static boolean decided(VerifyingKey key, byte[] message, byte[] signature) throws GeneralSecurityException {
        boolean ours = key.verifies(message, signature);
        assertThat(ours).as("seed %d", SEED).isEqualTo(Jdk.verifies(key.encoded(), message, signature));
        return ours;
    }

    private byte[] bytes(int length) {
        byte[] bytes = new byte[length];
        random.nextBytes(bytes);
        return bytes;
    }

    private static byte[] join(byte[] first, byte[] second) {
        return ByteBuffer.allocate(64).put(first, 0, 32).put(second).array();
    }

    /** A signer who chooses what RFC 8032 derives. */
    private static final class Cheat {
        private static final BigInteger NONCE = new BigInteger("1234567890123456789012345678901234567890");

        private final BigInteger secret;
        private final Edwards point;
        private final byte[] key;
        private final byte[] message;

        Cheat(BigInteger secret, byte[] message) {
            this.secret = secret.abs();
            this.point = Edwards.BASE.times(this.secret);
            this.key = point.encoded();
            this.message = message;
        }

        byte[] signature(Edwards torsion) {
            byte[] first = Edwards.BASE.times(NONCE).plus(torsion).encoded();
            return join(first, Edwards.littleEndian(secondHalf(NONCE, first)));
        }

        BigInteger secondHalf(BigInteger nonce, byte[] first) {
            return Edwards.hash(first, key, message).multiply(secret).add(nonce).mod(Edwards.L);
        }
    }
}
