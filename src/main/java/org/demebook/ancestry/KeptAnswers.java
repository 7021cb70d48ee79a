package org.demebook.ancestry;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.EntityTag;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.function.Supplier;

/**
 * Answers as they were sent, for those who ask the same again: to write an ancestry out costs several times what it costs
 * to find the ancestors. An answer is the same for everybody who may see the same. At most 64 MB; what is of an earlier
 * entry is asked for no longer and goes first.
 */
@ApplicationScoped
class KeptAnswers {
    private static final long MOST_BYTES = 64L << 20;

    /** The kinds of question. */
    enum Kind {
        ANCESTRY,
        KINSHIP,
        GENE_POOL
    }

    /**
     * @param snapshot identity of the one that answers
     * @param further generations, or the row of another animal
     */
    record Question(Object snapshot, Kind kind, int row, int further) {}

    /**
     * An answer, and its ETag: a hash of its bytes. It tells that an answer changed to who may see the answer, and nothing
     * else that happened.
     */
    record Answer(byte[] body, EntityTag tag) {}

    @Inject
    ObjectMapper json;

    private final Cache<Question, Answer> answers = Caffeine.newBuilder()
            .maximumWeight(MOST_BYTES)
            .weigher((Question question, Answer answer) -> answer.body.length + 150)
            .build();

    Answer get(Question question, Supplier<?> view) {
        return answers.get(question, unanswered -> written(view.get()));
    }

    private Answer written(Object view) {
        try {
            byte[] body = json.writeValueAsBytes(view);
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(body);
            return new Answer(body, new EntityTag(HexFormat.of().formatHex(hash, 0, 16)));
        } catch (JsonProcessingException | NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
