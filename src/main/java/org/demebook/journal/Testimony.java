package org.demebook.journal;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.demebook.wall.WholeRegister;

/** What one keeper said in a population: handed to them, and taken out when they leave. */
@ApplicationScoped
public class Testimony {
    private static final int CHUNK = 500;

    @Inject
    Journal journal;

    /** How many texts of theirs stand beside the journal. */
    @WholeRegister
    @Transactional
    public long texts(UUID populationId, UUID actorId) {
        return KeptWords.countOf(populationId, actorId);
    }

    /** Every entry of theirs in order, as it stands, with their words in it. */
    @WholeRegister
    @Transactional(TxType.REQUIRES_NEW)
    public void each(UUID populationId, UUID actorId, Consumer<JsonNode> reader) {
        var form = journal.form();
        chunks(populationId, actorId, entries -> {
            entries.forEach(
                    entry -> reader.accept(form.inFull(entry.body, digest -> KeptWords.find(populationId, digest))));
            JournalEntry.getEntityManager().clear();
        });
    }

    /** Every entry of theirs in order, so many at once. */
    private static void chunks(UUID populationId, UUID actorId, Consumer<List<JournalEntry>> reader) {
        long last = 0;
        List<JournalEntry> entries;
        do {
            entries = JournalEntry.saidBy(populationId, actorId, last, CHUNK);
            if (!entries.isEmpty()) {
                last = entries.get(entries.size() - 1).seq;
                reader.accept(entries);
            }
        } while (entries.size() == CHUNK);
    }

    /**
     * Takes the words of one entry out for good, whoever it was recorded for: they were another's, who took them back. Called while
     * the population is held.
     */
    @Transactional(TxType.MANDATORY)
    public void takeOutOf(UUID populationId, long seq) {
        JournalEntry.flush();
        Map<String, String> words = new HashMap<>();
        for (var kept : KeptWords.<KeptWords>list("populationId = ?1 and seq = ?2", populationId, seq)) {
            words.put(kept.digest, kept.words);
        }
        JournalEntry.after(populationId, seq - 1, 1)
                .forEach(entry -> journal.forget(entry.body, words::get, Set.of(), text -> false));
        JournalEntry.flush();
        KeptWords.delete("populationId = ?1 and seq = ?2", populationId, seq);
    }

    /**
     * Takes all their words out for good, out of the rows and from beside the journal, but for what stays with others. Called
     * while the population is held. Costs time with the number of their texts.
     *
     * @param sharedCollections collections that others act for too
     */
    @Transactional(TxType.MANDATORY)
    public void takeOut(UUID populationId, UUID actorId, Set<UUID> sharedCollections) {
        JournalEntry.flush();
        Map<Long, Map<String, String>> wordsOf = new HashMap<>();
        for (var kept : KeptWords.of(populationId, actorId)) {
            wordsOf.computeIfAbsent(kept.seq, seq -> new HashMap<>()).put(kept.digest, kept.words);
        }
        var gone = new ArrayList<Long>();
        chunks(populationId, actorId, entries -> {
            for (var entry : entries) {
                var words = wordsOf.get(entry.seq);
                if (words != null
                        && journal.forget(
                                entry.body,
                                words::get,
                                sharedCollections,
                                text -> KeptWords.saidByOthers(populationId, actorId, text))) {
                    gone.add(entry.seq);
                }
            }
        });
        JournalEntry.flush();
        for (int from = 0; from < gone.size(); from += CHUNK) {
            KeptWords.delete(
                    "populationId = ?1 and seq in ?2",
                    populationId,
                    gone.subList(from, Math.min(gone.size(), from + CHUNK)).stream()
                            .collect(Collectors.toSet()));
        }
    }
}
