package org.demebook.approach;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.demebook.consent.Action;
import org.demebook.consent.AgreedGrants;
import org.demebook.consent.Audience;
import org.demebook.consent.Consents;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.Purpose;
import org.demebook.consent.Subject;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Role;
import org.demebook.keeper.Standing;
import org.demebook.registry.Animals;
import org.demebook.registry.Custody;

/**
 * Gathers what the state of approaches follows from. Ask before you record anything in the same transaction: consent is read
 * as it was when the population was taken.
 */
@ApplicationScoped
class Situations {
    @Inject
    Animals animals;

    @Inject
    Consents consents;

    @Inject
    AgreedGrants grants;

    @Inject
    Keepers keepers;

    @Inject
    Clock clock;

    /** A few queries for any number of approaches, and one for each keeper who proposed one of them. */
    Situation of(Standing by, List<Approach> approaches) {
        var animalIds = new HashSet<UUID>();
        var grantIds = new ArrayList<UUID>();
        var ofProposer = new HashMap<UUID, Lens>();
        for (var approach : approaches) {
            animalIds.add(approach.animalId);
            animalIds.add(approach.partnerId);
            grantIds.addAll(approach.grants());
            if (!ofProposer.containsKey(approach.proposedBy)) {
                keepers.fellow(by, approach.proposedBy)
                        .ifPresent(proposer -> ofProposer.put(approach.proposedBy, pairing(proposer)));
            }
        }
        return new Situation(
                animals.custodies(by.populationId(), animalIds),
                Map.copyOf(ofProposer),
                ofMembers(by),
                grants.standing(by.populationId(), grantIds),
                today());
    }

    LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }

    /** Whether every member may have an animal computed with, in order to pair animals. */
    boolean isComputedByMembers(Standing by, Custody animal) {
        return computes(ofMembers(by), animal);
    }

    private Lens pairing(Standing keeper) {
        return consents.lens(keeper, Purpose.PAIRING_COMPUTATION, clock.instant());
    }

    /** Of a member who is nobody in particular. */
    private Lens ofMembers(Standing by) {
        var anybody = new Audience(by.populationId(), null, Role.MEMBER, Set.of());
        return consents.lens(anybody, Purpose.PAIRING_COMPUTATION, clock.instant());
    }

    static boolean computes(Lens lens, Custody animal) {
        var subject = Subject.of(animal.id(), animal.collectionId(), animal.ownerCollectionId());
        return counts(lens, subject, FieldGroup.IDENTITY) && counts(lens, subject, FieldGroup.PARENTAGE);
    }

    private static boolean counts(Lens lens, Subject subject, FieldGroup fieldGroup) {
        return lens.may(subject, fieldGroup, Action.READ) || lens.may(subject, fieldGroup, Action.COMPUTE);
    }
}
