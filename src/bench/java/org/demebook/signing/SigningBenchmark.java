package org.demebook.signing;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.concurrent.TimeUnit;
import org.demebook.merkle.MerkleTree;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** How many a second, on one thread: what decision 18 rests on. An entry has some 600 characters. */
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 3)
@Fork(1)
@State(Scope.Benchmark)
public class SigningBenchmark {
    private static final int MOST = 10_000;

    private final SigningKey key = SigningKey.generate();
    private final Signed entry = Signed.sign(
            "demebook-entry", JsonNodeFactory.instance.objectNode().put("seq", 1).put("name", "Wren ".repeat(60)), key);
    private final byte[] message = entry.compact().getBytes(StandardCharsets.US_ASCII);
    private final byte[] signature = key.sign(message);
    private final byte[] encodedKey = key.verifyingKey().encoded();
    private final byte[] seed = key.seed();
    private final byte[] salt = new byte[MerkleTree.SALT_BYTES];

    @Benchmark
    public byte[] sign() {
        return key.sign(message);
    }

    @Benchmark
    public byte[] signByTheJdk() throws GeneralSecurityException {
        return Jdk.sign(seed, message);
    }

    @Benchmark
    public boolean verify() {
        return key.verifyingKey().verifies(message, signature);
    }

    @Benchmark
    public boolean verifyByTheJdk() throws GeneralSecurityException {
        return Jdk.verifies(encodedKey, message, signature);
    }

    /** What a reader of a feed does with each entry before it looks at its meaning. */
    @Benchmark
    public byte[] readVerifyAndHash() {
        var read = Signed.parse(entry.compact(), MOST);
        if (!read.isBy(key.verifyingKey())) {
            throw new IllegalStateException();
        }
        return MerkleTree.leafOf(false, MerkleTree.digestOf(salt, message));
    }
}
