package org.demebook.telling;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** An entry of this node's federated journal that tells of an animal and was not withdrawn. */
@Entity
@Table(name = "telling")
@IdClass(TellingRow.Key.class)
class TellingRow extends PanacheEntityBase {
    record Key(UUID populationId, long seq) {}

    @Id
    UUID populationId;

    @Id
    long seq;

    /** What it says, told apart from anything else that could be said. */
    String digest;

    /** Node ids, ascending, a space between, or {@link Telling#EVERYBODY}; null where that is not known any more, after a restore. */
    @Nullable
    String readers;

    protected TellingRow() {}

    TellingRow(UUID populationId, long seq, String digest, @Nullable Set<String> readers) {
        this.populationId = populationId;
        this.seq = seq;
        this.digest = digest;
        this.readers = readers == null
                ? null
                : String.join(" ", readers.stream().sorted().toList());
    }

    Set<String> readers() {
        return readers == null ? Set.of() : Set.of(readers.split(" "));
    }

    static List<TellingRow> standing(UUID populationId) {
        return list("populationId = ?1 order by seq", populationId);
    }

    static boolean isKnown(UUID populationId, long seq) {
        return count("populationId = ?1 and seq = ?2", populationId, seq) > 0;
    }

    static void withdrawn(UUID populationId, Collection<Long> seqs) {
        delete("populationId = ?1 and seq in ?2", populationId, seqs);
    }
}
