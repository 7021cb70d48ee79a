package org.demebook.ancestry;

import static org.demebook.Backstage.ask;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Grant;
import org.demebook.consent.GrantsElsewhere;
import org.demebook.consent.Purpose;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.AnimalsElsewhere;
import org.demebook.registry.Elsewhere;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.jspecify.annotations.Nullable;

/** What another node (U) told of animals, as a test has it; of a population that no test told of there is nothing. */
@ApplicationScoped
public class ToldInTests implements AnimalsElsewhere, GrantsElsewhere {
    private static final Map<UUID, Told> TOLD = new ConcurrentHashMap<>();
    private static final AtomicLong VERSIONS = new AtomicLong();

    private record Told(Elsewhere elsewhere, List<Grant> grants) {}

    /** What node U tells of one population: everything anew each time. */
    public static final class Telling {
        /** All of the node's animals are one keeper's. */
        public final UUID keeper = UUID.randomUUID();

        private final UUID populationId;
        private final String populationCode;
        private final Map<UUID, PedigreeRow> animals = new HashMap<>();
        private final Map<UUID, Elsewhere.Descent> arrived = new HashMap<>();
        private final Map<UUID, UUID> possiblySame = new HashMap<>();

        public Telling(String populationCode) {
            this.populationCode = populationCode;
            this.populationId = UUID.fromString(
                    ask("select population_id from demebook.journal_head where code = ?", populationCode)
                            .get(0));
        }

        /** An animal with its number, which members may read; by id. */
        public UUID shown(int serial, Sex sex, @Nullable LocalDate born, @Nullable UUID dam, @Nullable UUID sire) {
            return add(new StudbookNumber(populationCode, "U", serial), UUID.randomUUID(), sex, born, dam, sire);
        }

        /** One that may be computed with. */
        public UUID skeleton(Sex sex, @Nullable UUID dam, @Nullable UUID sire) {
            var id = UUID.randomUUID();
            return add(StudbookNumber.placeholder(populationCode, id), id, sex, LocalDate.of(2014, 6, 1), dam, sire);
        }

        private UUID add(
                StudbookNumber number,
                UUID id,
                Sex sex,
                @Nullable LocalDate born,
                @Nullable UUID dam,
                @Nullable UUID sire) {
            animals.put(
                    id,
                    new PedigreeRow(
                            id,
                            number.toString(),
                            sex,
                            born == null ? null : born.toString(),
                            born,
                            born,
                            born != null,
                            null,
                            dam == null && sire == null ? Origin.WILD_CAUGHT : Origin.CAPTIVE_BRED,
                            dam,
                            sire == null ? new Sire.Unknown() : new Sire.Known(sire, false),
                            keeper,
                            keeper,
                            null,
                            null,
                            0,
                            "U",
                            false));
            return id;
        }

        public String number(UUID id) {
            return animals.get(id).number();
        }

        public void same(UUID id, UUID here) {
            animals.computeIfPresent(id, (same, row) -> row.standingFor(here));
        }

        public void possiblySame(UUID id, UUID here) {
            possiblySame.put(id, here);
        }

        public void arrived(UUID here, @Nullable UUID dam, @Nullable UUID sire, boolean unshown) {
            arrived.put(
                    here,
                    new Elsewhere.Descent(
                            dam,
                            sire == null ? new Sire.Unknown() : new Sire.Known(sire, false),
                            Origin.CAPTIVE_BRED,
                            unshown));
        }

        /** From now on. */
        public void tell() {
            var shown = new ArrayList<UUID>();
            var computed = new ArrayList<UUID>();
            animals.values().forEach(row -> (row.isNameless() ? computed : shown).add(row.id()));
            TOLD.put(
                    populationId,
                    new Told(
                            new Elsewhere(
                                    VERSIONS.incrementAndGet(), List.copyOf(animals.values()), arrived, possiblySame),
                            List.of(grant(shown, Action.READ), grant(computed, Action.COMPUTE))));
        }

        private Grant grant(List<UUID> ids, Action action) {
            return GrantsElsewhere.told(
                    UUID.randomUUID(),
                    keeper,
                    ids.stream().collect(Collectors.toSet()),
                    EnumSet.of(FieldGroup.IDENTITY, FieldGroup.PARENTAGE),
                    EnumSet.of(Purpose.PEDIGREE_VIEW, Purpose.PAIRING_COMPUTATION),
                    Set.of(action));
        }

        /** Everything is withdrawn. */
        public void withdraw() {
            TOLD.put(
                    populationId,
                    new Told(new Elsewhere(VERSIONS.incrementAndGet(), List.of(), Map.of(), Map.of()), List.of()));
        }
    }

    @Override
    public long version(UUID populationId) {
        var told = TOLD.get(populationId);
        return told == null ? 0 : told.elsewhere().version();
    }

    @Override
    public Elsewhere of(UUID populationId) {
        var told = TOLD.get(populationId);
        return told == null ? Elsewhere.NOTHING : told.elsewhere();
    }

    @Override
    public List<Grant> grantsOf(UUID populationId) {
        var told = TOLD.get(populationId);
        return told == null ? List.of() : told.grants();
    }
}
