package org.demebook.registry;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import java.util.stream.Collectors;
import org.demebook.consent.FieldGroup;
import org.demebook.journal.Entry;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.problem.Refusal;
import org.demebook.rest.Page;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** The animals of the populations on this node. */
@ApplicationScoped
public class Animals {
    private static final int CHUNK = 1000;

    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    AnimalViews views;

    @Inject
    AnimalSight sight;

    @Inject
    Registration registration;

    @Inject
    LeftFindings leftFindings;

    @Inject
    BulkLookup bulk;

    @Inject
    PedigreeRows pedigreeRows;

    @Inject
    EntityManager entities;

    // ── reading ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /**
     * One animal by its studbook number; refuses with MISTYPED_NUMBER, and with NO_SUCH_ANIMAL alike where there is none and
     * where the asker may not see it.
     */
    @Transactional
    public AnimalView get(Standing by, String number) {
        return views.of(by, require(by, number));
    }

    /** The same, empty where it would be refused with NO_SUCH_ANIMAL. */
    @Transactional
    public Optional<AnimalView> find(Standing by, String number) {
        return Animal.numbered(by.populationId(), number(number).toString())
                .filter(animal -> sight.sees(by, animal))
                .map(animal -> views.of(by, animal));
    }

    /**
     * The animals that the asker sees, in the order of their numbers.
     *
     * @param mine only those in the asker's collections
     * @param after cursor: serial and node code of the last one seen
     */
    @Transactional
    public Page<AnimalView> page(
            Standing by, @Nullable Sex sex, @Nullable Boolean alive, boolean mine, @Nullable String after, int limit) {
        // every serial is above 0: said so that the index on it may be taken
        var where = new StringBuilder("from Animal a where a.populationId = :population and a.serial > 0");
        var parameters = new HashMap<String, Object>();
        parameters.put("population", by.populationId());
        if (sex != null) {
            where.append(" and a.sex = :sex");
            parameters.put("sex", sex);
        }
        if (alive != null) {
            where.append(alive ? " and a.died is null" : " and a.died is not null");
        }
        if (mine) {
            where.append(" and (a.collectionId in :own or a.ownerCollectionId in :own)");
            parameters.put("own", keepers.collectionIds(by));
        } else {
            var seen = sight.condition(by);
            where.append(" and ").append(seen.jpql("a.collectionId", "a.ownerCollectionId", "a.id"));
            parameters.putAll(seen.parameters());
        }
        if (after != null) {
            var last = number(after);
            where.append(" and (a.nodeCode > :node or a.nodeCode = :node and a.serial > :serial)");
            parameters.put("node", last.nodeCode());
            parameters.put("serial", last.serial());
        }
        List<Animal> read = Animal.<Animal>find(where + " order by a.nodeCode, a.serial", parameters)
                .page(0, limit + 1)
                .list();
        return Page.of(views.of(by, read), limit, AnimalView::number);
    }

    /** Studbook numbers of the living animals of a sex in the asker's collections, in order; no more than that is read. */
    @Transactional
    public List<String> heldNumbers(Standing by, Sex sex) {
        return entities.createQuery(
                        "select a.number from Animal a where a.populationId = :population and a.collectionId in :own"
                                + " and a.sex = :sex and a.died is null and a.sameAsId is null"
                                + " order by a.nodeCode, a.serial",
                        String.class)
                .setParameter("population", by.populationId())
                .setParameter("own", keepers.collectionIds(by))
                .setParameter("sex", sex)
                .getResultList();
    }

    /**
     * Every animal that the asker sees in the order of the numbers, as they were at one moment; a thousand at a time are
     * in memory.
     *
     * @param mine only those in the asker's collections
     */
    @Transactional(TxType.REQUIRES_NEW)
    public void each(Standing by, boolean mine, Consumer<AnimalView> reader) {
        entities.createNativeQuery("set transaction isolation level repeatable read")
                .executeUpdate();
        String last = null;
        Page<AnimalView> page;
        do {
            page = page(by, null, null, mine, last, CHUNK);
            for (var animal : page.items()) {
                reader.accept(animal);
                last = animal.number();
            }
            entities.clear();
        } while (page.next() != null);
    }

    /**
     * What the register knows of animals named in bulk; a few queries for any number of them.
     *
     * @param references what the asker calls them; looked for in the asker's collections alone
     * @param withTransponders whether all transponders of living animals are wanted
     */
    @WholeRegister
    @Transactional
    public KnownAnimals known(
            Standing by, Collection<String> numbers, Collection<String> references, boolean withTransponders) {
        return bulk.known(by, numbers, references, withTransponders);
    }

    /** What other rooms need to know of an animal before they act on it. */
    @Transactional
    public Custody custody(Standing by, String number) {
        return Custody.of(require(by, number));
    }

    /** The same, whoever asks: for a room that knows on other grounds that they may know of the animal. */
    @WholeRegister
    @Transactional
    public Optional<Custody> custodyUnseen(UUID populationId, String number) {
        return Animal.numbered(populationId, number(number).toString()).map(Custody::of);
    }

    /** The same by id; for rooms that hold one. */
    @WholeRegister
    @Transactional
    public Custody custody(UUID populationId, UUID animalId) {
        return Custody.of(Animal.of(populationId, animalId));
    }

    /** The same of many, by id; one query. */
    @WholeRegister
    @Transactional
    public Map<UUID, Custody> custodies(UUID populationId, Set<UUID> animalIds) {
        return Animal.withIds(populationId, animalIds).stream()
                .collect(Collectors.toMap(animal -> animal.id, Custody::of));
    }

    /** The animal that a record stands for: itself, or the one whose number stands for it since two were merged. */
    @WholeRegister
    @Transactional
    public Custody standsFor(UUID populationId, UUID animalId) {
        return Custody.of(canonical(populationId, animalId));
    }

    /** Every record of the animal that a record stands for. */
    @WholeRegister
    @Transactional
    public Set<UUID> recordsOf(UUID populationId, UUID animalId) {
        return Animal.recordsOf(populationId, canonical(populationId, animalId).id).stream()
                .map(animal -> animal.id)
                .collect(Collectors.toSet());
    }

    private static Animal canonical(UUID populationId, UUID animalId) {
        var animal = Animal.of(populationId, animalId);
        while (animal.sameAsId != null) {
            animal = Animal.of(populationId, animal.sameAsId);
        }
        return animal;
    }

    /** The animal, dead or alive, in a collection of the asker's; refuses with NOT_YOUR_ANIMAL. */
    @Transactional
    public Custody held(Standing by, String number) {
        var animal = require(by, number);
        requireInHand(by, animal);
        return Custody.of(animal);
    }

    /**
     * Every record of a population in the order of the numbers, a few columns each, streamed: for the rooms that compute.
     *
     * @return the sequence number of the journal entry up to which these rows are
     */
    @Transactional
    public long eachOf(UUID populationId, Consumer<PedigreeRow> consumer) {
        return pedigreeRows.eachOf(populationId, consumer);
    }

    /** The same of some records. */
    @Transactional
    public List<PedigreeRow> pedigreeRows(UUID populationId, Collection<UUID> animalIds) {
        return pedigreeRows.of(populationId, animalIds);
    }

    /**
     * The records that entries after the given one touched, in the order of the numbers: for those who know the rest.
     *
     * @return the sequence number of the journal entry up to which this is
     */
    @Transactional
    public long changedSince(UUID populationId, long seq, Consumer<PedigreeRow> consumer) {
        return pedigreeRows.changedSince(populationId, seq, consumer);
    }

    /** The animal, alive and in a collection of the asker's; refuses with NOT_YOUR_ANIMAL or ANIMAL_DEAD. */
    @Transactional
    public Custody inHand(Standing by, String number) {
        var animal = held(by, number);
        if (animal.died() != null) {
            throw new Refusal(ANIMAL_DEAD, "%s died on %s.".formatted(animal.number(), animal.died()));
        }
        return animal;
    }

    // ── writing ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** Registers an animal that no litter of this register brought. Refuses what breaks a rule, telling every breach. */
    @Transactional
    public Registered register(Standing by, NewAnimal animal) {
        journal.open(by.populationId());
        var checked = registration.check(by, animal);
        journal.record(by.populationId(), by.keeperId(), checked.fact());
        leftFindings.record(by, LeftFindings.ANIMAL, checked.fact().animalId(), checked.breaches(), animal.leave());
        entities.flush();
        return new Registered(
                views.of(by, Animal.of(by.populationId(), checked.fact().animalId())), checked.warnings());
    }

    /** A block of fresh studbook numbers, in order; they are used up when their animals are recorded. */
    @Transactional(TxType.MANDATORY)
    public List<StudbookNumber> nextNumbers(Standing by, int count) {
        return nextNumbers(by, count, List.of());
    }

    /**
     * The same behind numbers that are about to be recorded.
     *
     * @param kept numbers that their animals bring with them, of this node or of another
     */
    @Transactional(TxType.MANDATORY)
    public List<StudbookNumber> nextNumbers(Standing by, int count, Collection<StudbookNumber> kept) {
        long last = kept.stream()
                .filter(number -> number.nodeCode().equals(journal.nodeCode()))
                .mapToLong(StudbookNumber::serial)
                .reduce(SerialCounter.last(by.populationId(), journal.nodeCode()), Math::max);
        var numbers = new ArrayList<StudbookNumber>(count);
        for (int i = 1; i <= count; i++) {
            numbers.add(new StudbookNumber(by.populationCode(), journal.nodeCode(), last + i));
        }
        return numbers;
    }

    /**
     * Records animals that the caller has checked, parents before young.
     *
     * @param progress told how many are done, now and then
     */
    @Transactional(TxType.MANDATORY)
    public void recordAll(Standing by, List<AnimalRegistered> animals, IntConsumer progress) {
        int done = 0;
        for (var animal : animals) {
            journal.record(by.populationId(), by.keeperId(), animal);
            if (++done % CHUNK == 0) {
                entities.flush();
                entities.clear();
                progress.accept(done);
            }
        }
        entities.flush();
    }

    /** Studbook numbers by id. */
    @WholeRegister
    @Transactional
    public Map<UUID, String> numbers(UUID populationId, Set<UUID> animalIds) {
        return Animal.withIds(populationId, animalIds).stream()
                .collect(Collectors.toMap(animal -> animal.id, animal -> animal.number));
    }

    /** The views of those of the animals that the asker sees, in the given order. */
    @Transactional
    public List<AnimalView> views(Standing by, List<UUID> animalIds) {
        return views.of(by, sight.seen(by, inOrder(by, animalIds)));
    }

    /** The same for both sides of a transfer: identity and parentage are shown whatever else was granted. */
    @Transactional
    public List<AnimalView> viewsInTransfer(Standing by, List<UUID> animalIds) {
        return views.of(by, inOrder(by, animalIds), EnumSet.of(FieldGroup.IDENTITY, FieldGroup.PARENTAGE));
    }

    private static List<Animal> inOrder(Standing by, List<UUID> animalIds) {
        var byId = new HashMap<UUID, Animal>();
        Animal.withIds(by.populationId(), animalIds).forEach(animal -> byId.put(animal.id, animal));
        return animalIds.stream().map(byId::get).toList();
    }

    /**
     * Puts an animal where a transfer says that it is; called while that fact is applied. The notes of one owner are not
     * shown to the next: they go with a loan, not with a sale.
     *
     * @param collectionId where it lives now; null while it is with somebody who does not take part
     * @param transferId the transfer that it is in; null when it is in a collection
     * @param ownerCollectionId whose it is now
     */
    @Transactional(TxType.MANDATORY)
    public void move(
            Entry entry,
            UUID animalId,
            @Nullable UUID collectionId,
            @Nullable UUID transferId,
            UUID ownerCollectionId) {
        var animal = Animal.of(entry.populationId(), animalId);
        animal.setCustody(collectionId, transferId, ownerCollectionId);
        animal.revision = entry.seq();
    }

    /** Puts an animal on its way to another node: it is in no collection here; called while that fact is applied. */
    @Transactional(TxType.MANDATORY)
    public void release(Entry entry, UUID animalId, UUID crossingId) {
        var animal = Animal.of(entry.populationId(), animalId);
        animal.setCustody(null, null, crossingId, Objects.requireNonNull(animal.ownerCollectionId));
        animal.revision = entry.seq();
    }

    /** Marks an animal as reported in two places, or, with null, in one again; called while that fact is applied. */
    @Transactional(TxType.MANDATORY)
    public void dispute(Entry entry, UUID animalId, @Nullable UUID disputeId) {
        var animal = Animal.of(entry.populationId(), animalId);
        animal.disputeId = disputeId;
        animal.revision = entry.seq();
    }

    // ── shared by the classes of this room ───────────────────────────────────────────────────────────────────────────

    Animal require(Standing by, String typed) {
        var number = number(typed);
        return Animal.numbered(by.populationId(), number.toString())
                .filter(animal -> sight.sees(by, animal))
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_ANIMAL, "No animal of %s has the number %s.".formatted(by.populationCode(), number)));
    }

    void requireInHand(Standing by, Animal animal) {
        if (animal.collectionId == null || !keepers.actsFor(by.populationId(), by.keeperId(), animal.collectionId)) {
            throw new Refusal(
                    NOT_YOUR_ANIMAL,
                    "%s is not in a collection of yours; only who holds it may do this.".formatted(animal.number));
        }
    }

    /** A studbook number as somebody typed it; refuses with MISTYPED_NUMBER. */
    public static StudbookNumber number(String typed) {
        try {
            return StudbookNumber.parse(typed);
        } catch (IllegalArgumentException e) {
            throw new Refusal(MISTYPED_NUMBER, "%s: %s.".formatted(typed, e.getMessage()), List.of(), e);
        }
    }
}
