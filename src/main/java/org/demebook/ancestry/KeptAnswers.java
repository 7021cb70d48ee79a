package org.demebook.ancestry;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * Ancestries as they were sent, for those who ask the same again: to write one out costs several times what it costs to find
 * the ancestors. An answer is the same for every member. At most 64 MB; what is of an earlier entry is asked for no longer
 * and goes first.
 */
@ApplicationScoped
class KeptAnswers {
    private static final long MOST_BYTES = 64L << 20;

    /** @param head of the snapshot that answers */
    record Question(UUID populationId, long head, int row, int generations) {}

    @Inject
    ObjectMapper json;

    private final Cache<Question, byte[]> answers = Caffeine.newBuilder()
            .maximumWeight(MOST_BYTES)
            .weigher((Question question, byte[] answer) -> answer.length + 100)
            .build();

    byte[] get(Question question, Supplier<AncestryView> view) {
        return answers.get(question, unanswered -> {
            try {
                return json.writeValueAsBytes(view.get());
            } catch (JsonProcessingException e) {
                throw new IllegalStateException(e);
            }
        });
    }
}
