package org.demebook.leaving;

import static org.demebook.problem.ProblemType.LEAVING_IN_THE_WAY;
import static org.demebook.problem.ProblemType.NAME_NOT_REPEATED;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.consent.CarriedGrants;
import org.demebook.journal.Journal;
import org.demebook.journal.Testimony;
import org.demebook.keeper.Asker;
import org.demebook.keeper.Leavers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.registry.Custody;
import org.demebook.registry.LeftAnimals;
import org.demebook.rest.Once;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** Takes a keeper out of a population. */
@ApplicationScoped
public class Erasures {
    private final SecureRandom random = new SecureRandom();

    @Inject
    Journal journal;

    @Inject
    Testimony testimony;

    @Inject
    Leavers leavers;

    @Inject
    LeftAnimals animals;

    @Inject
    CarriedGrants grants;

    @Inject
    Once once;

    /** What would go, what would stay, and what is in the way. Changes nothing. */
    @WholeRegister
    @Transactional
    public ErasureView preview(Standing by) {
        var alone = leavers.alone(by);
        int left = animals.of(by.populationId(), alone).size();
        return new ErasureView(goes(by), stays(left, leavers.shared(by).size()), leavers.inTheWay(by));
    }

    private List<String> goes(Standing by) {
        var goes = new ArrayList<>(List.of(
                "Your membership in %s.".formatted(by.populationCode()),
                "Everything you wrote in words, %d texts: notes, marks, own references, labels, reasons, causes of death, tasks, conditions of grants."
                        .formatted(testimony.texts(by.populationId(), by.keeperId())),
                "Your photographs, and the words of your hand-over sheets.",
                "What was found in your imports, and the answers that are kept for requests that are sent again."));
        goes.add(
                leavers.accountGoes(by)
                        ? "Your name, your sign-in and your calendar's address, since you belong to no other"
                                + " population here. An account that is kept elsewhere is deleted there."
                        : "Your account stays: you belong to another population here, or you administer this node.");
        return goes;
    }

    private static List<String> stays(int animals, int shared) {
        var stays = new ArrayList<>(List.of(
                "%d animals: number, sex, births, deaths, parents, litters, origin, locality and transponders. Each comes under a holder of its own, without a name, and is seen and computed with as far as you had granted until now; nothing of it is published any more."
                        .formatted(animals),
                "Days and quantities of what you recorded, without a word and under no name; what others wrote.",
                "Counts that were released."));
        if (shared > 0) {
            stays.add("%d collections that others act for too, with what you wrote and photographed for them."
                    .formatted(shared));
        }
        return stays;
    }

    /**
     * Does it, once and for good. Refuses with NAME_NOT_REPEATED, and with LEAVING_IN_THE_WAY, naming everything that is. Costs
     * time with the number of their texts and animals, while the population is held.
     */
    @Transactional
    public void erase(Asker asker, Standing by, NewErasure erasure) {
        if (!erasure.name().strip().equalsIgnoreCase(asker.name())) {
            throw new Refusal(
                    NAME_NOT_REPEATED,
                    "You wrote \"%s\", and you are signed in as %s. Repeat your sign-in name: this cannot be taken back."
                            .formatted(erasure.name(), asker.name()));
        }
        journal.open(by.populationId());
        var inTheWay = leavers.inTheWay(by);
        if (!inTheWay.isEmpty()) {
            throw new Refusal(LEAVING_IN_THE_WAY, String.join(" ", inTheWay));
        }
        var shared = leavers.shared(by);
        var alone = leavers.alone(by);
        var accountGoes = leavers.accountGoes(by);
        var members = leavers.members(by.populationId());
        var behind = new ArrayList<>(animals.of(by.populationId(), alone));
        var live = grants.live(by.populationId(), alone);

        leavers.leave(by, shared);
        testimony.takeOut(by.populationId(), by.keeperId(), shared);
        Collections.shuffle(behind, random); // so that no order tells that they were together
        for (var animal : behind) {
            leaveBehind(by, alone, animal, live);
        }
        leavers.clear(by, alone, accountGoes);
        once.forgetAnswers(members); // others were answered with the leaver's name and words
        if (accountGoes) {
            once.forget(by.keeperId());
        }
    }

    private void leaveBehind(Standing by, Set<UUID> alone, Custody animal, CarriedGrants.Live live) {
        var holder = Objects.requireNonNull(animal.collectionId());
        var owner = Objects.requireNonNull(animal.ownerCollectionId());
        var newHolder = heir(by, alone, animal, holder, live);
        var newOwner = owner.equals(holder) ? newHolder : heir(by, alone, animal, owner, live);
        animals.leaveBehind(
                by,
                animal.id(),
                Objects.requireNonNullElse(newHolder, holder),
                Objects.requireNonNullElse(newOwner, owner));
    }

    /** A fresh collection in the place of a leaver's; null in the place of anybody else's, which stays. */
    private @Nullable UUID heir(Standing by, Set<UUID> alone, Custody animal, UUID former, CarriedGrants.Live live) {
        if (!alone.contains(former)) {
            return null;
        }
        var heir = UUID.randomUUID(); // random: not even the time of its making is in it
        leavers.openUnnamed(by, heir);
        grants.carryOver(live, by.populationId(), animal.id(), former, heir);
        return heir;
    }
}
