package org.demebook.rest;

import static org.demebook.problem.ProblemType.IDEMPOTENCY_KEY_MISSING;
import static org.demebook.problem.ProblemType.IDEMPOTENCY_KEY_REUSED;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.UUID;
import java.util.function.Supplier;
import org.demebook.problem.Refusal;
import org.jspecify.annotations.Nullable;

/**
 * One effect and one answer for a POST that is sent again, as the IETF draft "The Idempotency-Key HTTP Header Field"
 * describes it.
 *
 * <p>The answer is kept in the transaction that makes the effect, so there is never one without the other. A request
 * that comes while its twin is still at work waits for it. A refusal has no effect and is not kept: the same key may be
 * sent again with a mended body.
 */
@ApplicationScoped
public class Once {
    /** Name of the query parameter by which a page's form sends its key. */
    public static final String IN_ADDRESS = "once";

    private static final Duration KEPT = Duration.ofDays(7);

    @Inject
    EntityManager entities;

    @Inject
    ObjectMapper json;

    @Context
    HttpHeaders headers;

    @Context
    UriInfo uri;

    @Context
    Request request;

    /**
     * What a POST answers: with its address when something was created.
     *
     * @param kept false when the body holds a secret that is shown once: then the effect is kept, the body is not
     */
    public record Answer(
            int status,
            @Nullable URI location,
            @Nullable Long revision,
            @Nullable Object body,
            boolean kept) {
        public static Answer created(URI location, @Nullable Long revision, Object body) {
            return new Answer(201, location, revision, body, true);
        }

        public static Answer accepted(URI location, Object body) {
            return new Answer(202, location, null, body, true);
        }

        public static Answer ok(@Nullable Long revision, Object body) {
            return new Answer(200, null, revision, body, true);
        }

        /** Of a page's form: what came of it is at that address. */
        public static Answer seeOther(URI address) {
            return new Answer(303, address, null, null, true);
        }

        public static Answer done() {
            return new Answer(204, null, null, null, true);
        }

        public Answer shownOnce() {
            return new Answer(status, location, revision, body, false);
        }
    }

    /**
     * Does the work, unless the same asker did it before with the same key: then gives the answer of that time.
     *
     * @param actorId whose keys these are
     * @param sent the body as it was understood, or its bytes; white space and the order of fields do not matter
     */
    @Transactional
    public Response answer(UUID actorId, @Nullable Object sent, Supplier<Answer> work) {
        var key = requireKey();
        var fingerprint = fingerprint(sent);
        // waits for a twin that is still at work: a unique key blocks until the other transaction ends
        int mine = entities.createNativeQuery("insert into kept_answer (actor_id, key, fingerprint, status, kept_at)"
                        + " values (?1, ?2, ?3, 0, ?4) on conflict do nothing")
                .setParameter(1, actorId)
                .setParameter(2, key)
                .setParameter(3, fingerprint)
                .setParameter(4, Instant.now())
                .executeUpdate();
        var kept = entities.find(KeptAnswer.class, new KeptAnswer.Key(actorId, key));
        if (mine == 0) {
            if (!Arrays.equals(kept.fingerprint, fingerprint)) {
                throw new Refusal(
                        IDEMPOTENCY_KEY_REUSED,
                        "The Idempotency-Key \"%s\" was used for another request. Take a fresh one for each new thing."
                                .formatted(key));
            }
            return kept.response(kept.body);
        }
        var answer = work.get();
        return kept.fill(answer, json);
    }

    private String requireKey() {
        // a form without script can send no header: its address carries the key
        var header = headers.getHeaderString("Idempotency-Key");
        var key = header == null ? uri.getQueryParameters().getFirst(IN_ADDRESS) : header;
        if (key == null || key.isBlank() || key.length() > 100 || !key.chars().allMatch(c -> c > 31 && c < 127)) {
            throw new Refusal(
                    IDEMPOTENCY_KEY_MISSING,
                    "Send a header Idempotency-Key with a fresh value (a UUID will do, 1 to 100 plain characters); "
                            + "send the same value again if you have to repeat the request.");
        }
        return key;
    }

    private byte[] fingerprint(@Nullable Object sent) {
        try {
            var digest = MessageDigest.getInstance("SHA-256");
            digest.update((request.getMethod() + " " + uri.getPath() + "\n").getBytes(StandardCharsets.UTF_8));
            digest.update(sent instanceof byte[] bytes ? bytes : json.writeValueAsBytes(sent));
            return digest.digest();
        } catch (NoSuchAlgorithmException | JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /**
     * Takes out what keepers were answered; that the effects are there stays known for as long as ever, so that nothing is done
     * twice.
     */
    @Transactional
    public void forgetAnswers(Collection<UUID> actorIds) {
        if (!actorIds.isEmpty()) {
            KeptAnswer.update("body = null where actorId in ?1", actorIds);
        }
    }

    /** The same of somebody who is gone, with their keys. */
    @Transactional
    public void forget(UUID actorId) {
        KeptAnswer.delete("actorId", actorId);
    }

    @Scheduled(every = "6h", delayed = "5m")
    @Transactional
    void forgetOld() {
        KeptAnswer.delete("keptAt < ?1", Instant.now().minus(KEPT));
    }

    /** The media type of every body that is kept. */
    static final String JSON = MediaType.APPLICATION_JSON;
}
