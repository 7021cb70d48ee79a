package org.demebook.registry;

import static org.demebook.problem.ProblemType.REFERENCE_TAKEN;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.problem.Rule;
import org.jspecify.annotations.Nullable;

/**
 * The young of a litter: checked by the same rules as any animal, and turned into the facts to be recorded. Nothing is
 * written here, and nothing refused: breaches are added to those of the litter, which tells them all.
 */
@ApplicationScoped
public class Newborns {
    /** Where the young of one litter come from. */
    public record Parentage(UUID damId, Sire sire, Origin origin, boolean removedFromDeadDam) {
        public Parentage(UUID damId, Sire sire, Origin origin) {
            this(damId, sire, origin, false);
        }

        /** The same with low confidence in the known sire, if there is one. */
        public Parentage doubting() {
            return sire instanceof Sire.Known known
                    ? new Parentage(damId, new Sire.Known(known.sireId(), true), origin, removedFromDeadDam)
                    : this;
        }
    }

    /**
     * One live-born young.
     *
     * @param ownReference what its keeper calls it
     */
    public record Neonate(
            Sex sex,
            boolean malformed,
            @Nullable String ownReference,
            List<String> marks,
            @Nullable String notes) {}

    @Inject
    Registration registration;

    @Inject
    IdentifierRules identifierRules;

    @Inject
    Animals animals;

    /**
     * Finds the sire of a litter and checks both parents against the birth.
     *
     * <p>A known sire that died before the conception is taken as doubtful, unless the statement says that he is not.
     *
     * @param dam already found, in the hands of the asker
     * @param litterId of one sire drawn for the whole litter, it is the draw
     */
    @Transactional(TxType.MANDATORY)
    public Parentage parentage(
            Standing by,
            Custody dam,
            @Nullable StatedSire sire,
            Origin origin,
            RoughDate born,
            UUID litterId,
            List<Breach> breaches) {
        return parentage(by, dam, sire, origin, born, litterId, false, breaches);
    }

    /**
     * The same.
     *
     * @param removedFromDeadDam the young were taken from their dam after her death
     */
    @Transactional(TxType.MANDATORY)
    public Parentage parentage(
            Standing by,
            Custody dam,
            @Nullable StatedSire sire,
            Origin origin,
            RoughDate born,
            UUID litterId,
            boolean removedFromDeadDam,
            List<Breach> breaches) {
        registration.checkDay("born", born, breaches);
        var parents = registration.parents(by, dam.number(), sire, litterId, breaches);
        var young = new Kin("The litter", Sex.UNKNOWN, born, null, null, removedFromDeadDam);
        var found = registration
                .rules(by)
                .check(young, origin, Registration.kin(parents.dam()), Registration.kin(parents.sires()));
        breaches.addAll(found);
        var parentage = new Parentage(dam.id(), parents.sire(), origin, removedFromDeadDam);
        boolean open = sire == null || sire.doubtful() == null;
        boolean stored = found.stream().anyMatch(breach -> breach.finding().rule() == Rule.STORED_SPERM);
        return open && stored ? parentage.doubting() : parentage;
    }

    /** The facts that register live-born young, with the next numbers in one block and in the given order. */
    @Transactional(TxType.MANDATORY)
    public List<AnimalRegistered> facts(
            Standing by,
            Parentage parentage,
            RoughDate born,
            UUID litterId,
            UUID collectionId,
            List<Neonate> neonates,
            List<Breach> breaches) {
        var numbers = animals.nextNumbers(by, neonates.size());
        var references = new HashSet<String>();
        var facts = new ArrayList<AnimalRegistered>(neonates.size());
        for (int i = 0; i < neonates.size(); i++) {
            var neonate = neonates.get(i);
            facts.add(new AnimalRegistered(
                    Journal.newId(),
                    numbers.get(i),
                    neonate.sex(),
                    born,
                    null,
                    parentage.origin(),
                    null,
                    parentage.damId(),
                    parentage.sire(),
                    litterId,
                    neonate.malformed(),
                    collectionId,
                    identifiers(by, neonate, "young[%d]".formatted(i), collectionId, references, breaches),
                    neonate.notes(),
                    null,
                    parentage.removedFromDeadDam(),
                    null));
        }
        return facts;
    }

    private List<IdentifierView> identifiers(
            Standing by,
            Neonate neonate,
            String part,
            UUID collectionId,
            Set<String> references,
            List<Breach> breaches) {
        var stated = new ArrayList<IdentifierView>();
        neonate.marks().forEach(mark -> stated.add(new IdentifierView(Identifier.MARK, mark)));
        if (neonate.ownReference() != null) {
            stated.add(new IdentifierView(Identifier.OWN_REFERENCE, neonate.ownReference()));
            if (!references.add(neonate.ownReference().strip())) {
                breaches.add(Breach.error(
                                REFERENCE_TAKEN,
                                "ownReference",
                                neonate.ownReference(),
                                "Two young of this litter are called \"%s\"; give each a reference of its own."
                                        .formatted(neonate.ownReference().strip()))
                        .within(part));
            }
        }
        var found = new ArrayList<Breach>();
        var identifiers = stated.stream()
                .map(identifier -> identifierRules.check(by, identifier, collectionId, null, found))
                .distinct()
                .toList();
        found.forEach(breach -> breaches.add(breach.within(part)));
        return identifiers;
    }
}
