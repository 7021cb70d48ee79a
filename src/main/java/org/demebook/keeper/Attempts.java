package org.demebook.keeper;

import static org.demebook.problem.ProblemType.TOO_MANY_REQUESTS;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.github.bucket4j.Bucket;
import io.vertx.core.http.HttpServerRequest;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.function.Supplier;
import org.demebook.problem.Refusal;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Guessing is slow: from one address, a few wrong secrets in a while, then none. Right ones cost nothing. */
@ApplicationScoped
public class Attempts {
    private final Cache<String, Bucket> bucketOfAddress = Caffeine.newBuilder()
            .maximumSize(100_000)
            .expireAfterAccess(Duration.ofHours(1))
            .build();

    @ConfigProperty(name = "demebook.attempts.wrong-per-quarter-hour", defaultValue = "10")
    int wrongPerQuarterHour;

    /** Does the work and counts a refusal against the sender's address; refuses with TOO_MANY_REQUESTS unasked when it is used up. */
    public <T> T counted(HttpServerRequest request, Supplier<T> work) {
        var bucket = bucketOfAddress.get(request.remoteAddress().hostAddress(), address -> Bucket.builder()
                .addLimit(limit ->
                        limit.capacity(wrongPerQuarterHour).refillGreedy(wrongPerQuarterHour, Duration.ofMinutes(15)))
                .build());
        if (bucket.getAvailableTokens() == 0) {
            throw new Refusal(TOO_MANY_REQUESTS, "Wait a quarter of an hour, then try again.");
        }
        try {
            return work.get();
        } catch (Refusal refusal) {
            if (refusal.type().status() == 401 || refusal.type().status() == 404) {
                bucket.tryConsume(1);
            }
            throw refusal;
        }
    }
}
