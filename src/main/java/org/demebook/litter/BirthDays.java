package org.demebook.litter;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** When dams gave birth, for the room that says which of them rests. */
@ApplicationScoped
public class BirthDays {
    /**
     * @param collectionId that the litter was born in, whose keepers have a say in it
     * @param earliest null: open towards the past
     * @param latest null: open towards the future
     */
    public record BirthDay(
            UUID damId,
            UUID collectionId,
            @Nullable LocalDate earliest,
            @Nullable LocalDate latest) {}

    /**
     * All litters of the population, whatever came of them. Never to be shown, or computed with, without the grants of those
     * for whom they were written. One query.
     */
    @WholeRegister
    @Transactional
    public List<BirthDay> of(UUID populationId) {
        return Litter.getEntityManager()
                .createQuery(
                        "select l.damId, l.collectionId, l.bornEarliest, l.bornLatest from Litter l"
                                + " where l.populationId = ?1 order by l.id",
                        Object[].class)
                .setParameter(1, populationId)
                .getResultStream()
                .map(row -> new BirthDay((UUID) row[0], (UUID) row[1], (LocalDate) row[2], (LocalDate) row[3]))
                .toList();
    }
}
