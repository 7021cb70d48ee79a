package org.demebook.journal;

import static org.demebook.problem.ProblemType.CODE_TAKEN;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import com.fasterxml.uuid.Generators;
import io.quarkus.arc.All;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.demebook.problem.Refusal;
import org.demebook.wall.Wall;
import org.demebook.wall.WholeRegister;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/**
 * The journals of this node.
 *
 * <p>A change is {@link #open} (locks the population's head row: from here on nobody else changes this population),
 * then the room's own checks, then {@link #record} for each fact: it writes the entry and has the room apply it. All
 * three stand in one transaction of the caller.
 */
@ApplicationScoped
public class Journal {
    private final Map<String, FactBook> bookOfType = new HashMap<>();
    private final CanonicalEntry form = new CanonicalEntry();
    private final Clock clock;
    private final String nodeCode;
    private final Wall wall;

    @Inject
    Journal(
            @All List<FactBook> books,
            Clock clock,
            Wall wall,
            @ConfigProperty(name = "demebook.node.code") String nodeCode) {
        this.clock = clock;
        this.wall = wall;
        if (nodeCode.startsWith("0")) {
            throw new IllegalStateException(
                    "demebook.node.code is %s; codes that begin with 0 stand for animals of other nodes whose number is not told. Choose another."
                            .formatted(nodeCode));
        }
        this.nodeCode = nodeCode;
        for (var book : books) {
            for (var fact : book.facts()) {
                form.know(fact);
                bookOfType.put(Fact.typeOf(fact), book);
            }
        }
    }

    /** A fresh id, ordered by time (UUIDv7). */
    public static UUID newId() {
        return Generators.timeBasedEpochGenerator().generate();
    }

    /** This node's code in studbook numbers and journals. */
    public String nodeCode() {
        return nodeCode;
    }

    /** Begins the journal of a population that is being founded; refuses with CODE_TAKEN. */
    @Transactional(TxType.MANDATORY)
    public void begin(UUID populationId, String code) {
        wall.openForWriting();
        if (JournalHead.count("code", code) > 0) {
            throw new Refusal(CODE_TAKEN, "The code %s is in use; choose another.".formatted(code));
        }
        new JournalHead(populationId, code, nodeCode).persistAndFlush();
    }

    /** Takes the population for the rest of the transaction: whoever comes second waits. Returns its last sequence number. */
    @Transactional(TxType.MANDATORY)
    public long open(UUID populationId) {
        return locked(populationId).seq;
    }

    /** The last sequence number that the present transaction sees; 0 where there is no such population. Waits for nobody. */
    @Transactional
    public long head(UUID populationId) {
        return JournalHead.seqOf(populationId);
    }

    /** Writes down what happened and has its room apply it. */
    @Transactional(TxType.MANDATORY)
    public Entry record(UUID populationId, UUID actorId, Fact fact) {
        var head = locked(populationId);
        head.seq++;
        var now = Instant.now(clock).truncatedTo(ChronoUnit.MILLIS);
        var entry = new Entry(populationId, nodeCode, head.seq, now, actorId);
        var words = new HashMap<String, String>();
        var body = form.write(entry, fact, written -> {
            var kept = new KeptWords(entry, written);
            kept.persist();
            words.put(kept.digest, written);
            return kept.digest;
        });
        new JournalEntry(entry, Fact.typeOf(fact.getClass()), body).persist();
        // as it can be read back, so that a replay does the same: an empty text, say, is no text there
        apply(entry, form.read(body, words::get).fact());
        return entry;
    }

    /** The stored bytes of entries, in order. The words that they hold digests of stand beside them. */
    @Transactional
    @WholeRegister
    public List<byte[]> entries(UUID populationId, long afterSeq, int most) {
        return JournalEntry.after(populationId, afterSeq, most).stream()
                .map(entry -> entry.body)
                .toList();
    }

    /**
     * Builds a population from the bytes of its journal where there is none yet; what keepers wrote in words is read from
     * beside it, as far as it is still there.
     *
     * @param bodies all entries from the first on, as {@link #entries} gave them
     */
    @Transactional
    public void replay(UUID populationId, String code, List<byte[]> bodies) {
        begin(populationId, code);
        for (var body : bodies) {
            var read = form.read(body, digest -> KeptWords.find(populationId, digest));
            var head = locked(populationId);
            if (read.entry().seq() != head.seq + 1
                    || !read.entry().populationId().equals(populationId)) {
                throw new IllegalArgumentException("entry %d of %s does not follow entry %d of %s"
                        .formatted(read.entry().seq(), read.entry().populationId(), head.seq, populationId));
            }
            head.seq++;
            new JournalEntry(read.entry(), Fact.typeOf(read.fact().getClass()), body).persist();
            apply(read.entry(), read.fact());
            // each as if alone, as it happened: gathered, an insert would come before the delete that made room for it
            JournalEntry.flush();
            JournalEntry.getEntityManager().clear();
        }
    }

    CanonicalEntry form() {
        return form;
    }

    /** @return whether the words of the entry may go; they are out of the rows then */
    boolean forget(
            byte[] body,
            UnaryOperator<@Nullable String> find,
            Set<UUID> sharedCollections,
            Predicate<String> saidByOthers) {
        var said = form.read(body, find);
        var left = form.read(body, digest -> null);
        return book(said.fact())
                .forget(new Forgotten(said.entry(), said.fact(), left.fact(), sharedCollections, saidByOthers));
    }

    private void apply(Entry entry, Fact fact) {
        book(fact).apply(entry, fact);
    }

    private FactBook book(Fact fact) {
        var book = bookOfType.get(Fact.typeOf(fact.getClass()));
        if (book == null) {
            throw new IllegalStateException("no room knows the fact " + fact.getClass());
        }
        return book;
    }

    private JournalHead locked(UUID populationId) {
        wall.openForWriting();
        var head = JournalHead.locked(populationId);
        if (head == null) {
            throw new Refusal(NO_SUCH_POPULATION, "There is no such population here.");
        }
        return head;
    }
}
