package org.demebook.telling;

import static org.demebook.problem.ProblemType.CLAIM_ALREADY_ANSWERED;
import static org.demebook.problem.ProblemType.CLAIM_NOT_POSSIBLE;
import static org.demebook.problem.ProblemType.NODE_FENCED;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NOT_SHARED;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_CLAIM;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.demebook.federation.Federations;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Refused;
import org.demebook.protocol.SameAnimalClaim;
import org.demebook.protocol.SameAnimalClaim.State;
import org.demebook.registry.Animals;
import org.demebook.registry.AwayAnimals;
import org.demebook.registry.Custody;
import org.demebook.registry.PedigreeRow;
import org.demebook.telling.SameAnimalFacts.SameAnimalClaimedElsewhere;
import org.demebook.telling.SameAnimalFacts.SameAnimalConfirmedElsewhere;
import org.demebook.telling.SameAnimalFacts.SameAnimalReversedElsewhere;
import org.demebook.wall.WholeRegister;

/**
 * One animal that two nodes registered. The keeper of the one claims it on the one node, the keeper of the other confirms it on the other;
 * both numbers stay, figures count one animal, and either side takes it back. Who has a say here: whoever acts for the collection that
 * the animal lives in; once it is kept on another node, whoever gave it there. To anybody else there is no such claim.
 *
 * <p>What a keeper does is written into the federated journal in the same transaction. How a claim stands follows from the journals of the
 * two nodes.
 */
@ApplicationScoped
public class SameAnimalsElsewhere {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    AwayAnimals awayAnimals;

    @Inject
    Federations federations;

    @Inject
    ToldAnimals told;

    @Inject
    OtherAnimals others;

    /** A claim about a record of this register. */
    private record Mine(SameAnimalClaim claim, Custody record, boolean claimedHere) {
        AnimalId own() {
            return claimedHere ? claim.animal() : claim.other();
        }

        AnimalId other() {
            return claimedHere ? claim.other() : claim.animal();
        }
    }

    /** Whether the population is shared, so that there can be such claims. */
    @Transactional
    public boolean isPossible(Standing by) {
        return federations.isShared(by.populationId());
    }

    /** What an animal of the asker's is called between nodes; empty as long as it was not. Refuses as {@link Animals#held}. */
    @Transactional
    public Optional<String> betweenNodes(Standing by, String number) {
        return federations
                .animalId(by.populationId(), animals.held(by, number).id())
                .map(AnimalId::toString);
    }

    /** The claims about animals of the asker's, the latest first. O(claims + animals that nodes know of). */
    @WholeRegister
    @Transactional
    public List<SameAnimalElsewhereView> about(Standing by) {
        var numbers = others.numbers(by);
        return mine(by).stream()
                .sorted(Comparator.comparing((Mine mine) -> mine.claim.claimedAt())
                        .reversed()
                        .thenComparing(mine -> mine.claim.id()))
                .map(mine -> view(by, mine, numbers))
                .toList();
    }

    /** Claims that an animal in the asker's hands is one of another node; an open claim of the same is not made twice. O(population). */
    @Transactional
    public SameAnimalElsewhereView claim(Standing by, NewSameAnimalElsewhere claim) {
        journal.open(by.populationId());
        var animal = animals.held(by, claim.animal());
        if (!federations.isShared(by.populationId())) {
            throw new Refusal(
                    NOT_SHARED,
                    "%s is kept on this node alone. Claim it between two records of this node (POST …/animals/{number}/same-animal-claims)."
                            .formatted(by.populationCode()));
        }
        var numbers = others.numbers(by);
        var other = others.require(by, claim.other(), animal.id());
        var named = federations.animalId(by.populationId(), animal.id());
        named.ifPresent(id -> requireRegisteredHere(by, animal, id));
        var open = claims(by).stream()
                .filter(one -> one.state() == State.CLAIMED
                        && named.filter(id -> isBetween(one, id, other)).isPresent())
                .findFirst();
        if (open.isPresent() && isOwn(open.get().animal())) {
            return get(by, open.get().id(), numbers);
        }
        open.ifPresent(one -> {
            throw new Refusal(
                    CLAIM_NOT_POSSIBLE,
                    "The other side claims that already: confirm it (POST …/federation/same-animal-claims/%s/confirmation)."
                            .formatted(one.id()));
        });
        requirePossible(by, animal, other, claim.other().strip());
        return saying(() -> {
            var own = federations.name(by.populationId(), by.keeperId(), animal.id());
            var id = federations.with(by.populationId(), participant -> participant.claimSame(own, other));
            journal.record(
                    by.populationId(),
                    by.keeperId(),
                    new SameAnimalClaimedElsewhere(id, animal.id(), other.toString()));
            return get(by, id, numbers);
        });
    }

    /** Agrees with what the other node claims; nothing where it was agreed before. O(population). */
    @Transactional
    public SameAnimalElsewhereView confirm(Standing by, UUID claimId) {
        journal.open(by.populationId());
        var mine = require(by, claimId);
        var numbers = others.numbers(by);
        var state = mine.claim.state();
        if (state == State.REVERSED) {
            throw new Refusal(CLAIM_ALREADY_ANSWERED, "The claim was taken back; make it anew.");
        }
        if (mine.claimedHere && state == State.CLAIMED) {
            throw new Refusal(
                    NOT_YOUR_ANIMAL,
                    "The keeper of the other animal confirms, on node %s; ask them.".formatted(node(by, mine.other())));
        }
        if (state == State.CLAIMED) {
            requirePossible(
                    by,
                    mine.record,
                    mine.other(),
                    numbers.getOrDefault(mine.other(), mine.other().toString()));
            saying(() -> federations.with(by.populationId(), participant -> {
                participant.confirmSame(mine.claim);
                return true;
            }));
            journal.record(
                    by.populationId(),
                    by.keeperId(),
                    new SameAnimalConfirmedElsewhere(
                            claimId, mine.record.id(), mine.other().toString()));
        }
        return get(by, claimId, numbers);
    }

    /** Takes a claim back that was made, or confirmed, here; nothing where it was taken back before. */
    @Transactional
    public SameAnimalElsewhereView reverse(Standing by, UUID claimId) {
        journal.open(by.populationId());
        var mine = require(by, claimId);
        var numbers = others.numbers(by);
        var state = mine.claim.state();
        if (!mine.claimedHere && state == State.CLAIMED) {
            throw new Refusal(
                    NOT_ALLOWED,
                    "Node %s claims it, and nobody here has confirmed: leave it, and they stay two animals. Who claimed it can take it back there."
                            .formatted(node(by, mine.other())));
        }
        if (state != State.REVERSED) {
            saying(() -> federations.with(by.populationId(), participant -> {
                participant.reverseSame(claimId);
                return true;
            }));
            journal.record(
                    by.populationId(), by.keeperId(), new SameAnimalReversedElsewhere(claimId, mine.record.id()));
        }
        return get(by, claimId, numbers);
    }

    // ── what speaks against it ───────────────────────────────────────────────────────────────────────────────────────

    private void requireRegisteredHere(Standing by, Custody animal, AnimalId id) {
        if (!isOwn(id)) {
            throw new Refusal(
                    CLAIM_NOT_POSSIBLE,
                    "%s was registered on node %s, and only there it can be said of it; ask who gave it to you."
                            .formatted(animal.number(), node(by, id)));
        }
    }

    private void requirePossible(Standing by, Custody animal, AnimalId other, String named) {
        var sameAs = federations.reading(by.populationId(), Participant::told).sameAs();
        var ids = federations.animalIds(by.populationId());
        var one = animals.standsFor(by.populationId(), animal.id()).id();
        ids.forEach((record, id) -> {
            boolean agreed = sameAs.getOrDefault(id, id).equals(sameAs.getOrDefault(other, other));
            if (agreed && record.equals(animal.id())) {
                throw new Refusal(
                        CLAIM_NOT_POSSIBLE, "%s and %s are one animal already.".formatted(animal.number(), named));
            }
            if (agreed && !animals.standsFor(by.populationId(), record).id().equals(one)) {
                throw new Refusal(
                        CLAIM_NOT_POSSIBLE,
                        "%s is another record of this node, or was agreed to be. Say first that the two records here are one animal (POST …/animals/{number}/same-animal-claims)."
                                .formatted(named));
            }
        });
        var here = new ArrayList<PedigreeRow>();
        animals.eachOf(by.populationId(), here::add);
        new OneAnimal(here, told.of(by.populationId()), others.lens(by))
                .require(animal.id(), ToldRows.rowOf(other), named);
    }

    // ── whose it is, and how it stands ───────────────────────────────────────────────────────────────────────────────

    private boolean isOwn(AnimalId id) {
        return id.node().equals(federations.nodeId());
    }

    private List<SameAnimalClaim> claims(Standing by) {
        return federations.isShared(by.populationId())
                ? federations.reading(by.populationId(), Participant::sameAnimalClaims)
                : List.of();
    }

    private static boolean isBetween(SameAnimalClaim claim, AnimalId one, AnimalId other) {
        return claim.animal().equals(one) && claim.other().equals(other)
                || claim.animal().equals(other) && claim.other().equals(one);
    }

    /** As many queries for whichever claim is asked for: one that is hidden costs what an absent one does. */
    private List<Mine> mine(Standing by) {
        var claims = claims(by);
        if (claims.isEmpty()) {
            return List.of();
        }
        var records = new HashMap<AnimalId, UUID>();
        federations.animalIds(by.populationId()).forEach((record, id) -> records.put(id, record));
        var named = claims.stream()
                .filter(claim -> isOwn(claim.animal()) != isOwn(claim.other()))
                .filter(claim -> records.containsKey(own(claim)))
                .toList();
        var custodies = animals.custodies(
                by.populationId(),
                Set.copyOf(named.stream().map(claim -> records.get(own(claim))).toList()));
        var collections = keepers.collectionIds(by);
        return named.stream()
                .map(claim -> new Mine(
                        claim, Objects.requireNonNull(custodies.get(records.get(own(claim)))), isOwn(claim.animal())))
                .filter(mine ->
                        collections.contains(mine.record.collectionId()) || awayAnimals.gaveAway(by, mine.record.id()))
                .toList();
    }

    private AnimalId own(SameAnimalClaim claim) {
        return isOwn(claim.animal()) ? claim.animal() : claim.other();
    }

    /** An own claim before another node's that was given the same id; between two other nodes nobody can say which is meant. */
    private Mine require(Standing by, UUID claimId) {
        var named = mine(by).stream()
                .filter(mine -> mine.claim.id().equals(claimId))
                .sorted(Comparator.comparing(mine -> !mine.claimedHere))
                .toList();
        if (named.isEmpty()) {
            throw new Refusal(
                    NO_SUCH_CLAIM, "There is no such claim about an animal of yours and one of another node.");
        }
        if (named.size() > 1 && !named.get(0).claimedHere) {
            throw new Refusal(
                    CLAIM_NOT_POSSIBLE,
                    "Nodes %s and %s gave their claims the same id, which does not happen by chance. Show it to the administrator, and have the other keeper take theirs back and claim anew."
                            .formatted(
                                    node(by, named.get(0).other()),
                                    node(by, named.get(1).other())));
        }
        return named.get(0);
    }

    /** @param numbers read before anything was written, so that nothing is kept of what may be taken back */
    private SameAnimalElsewhereView get(Standing by, UUID claimId, Map<AnimalId, String> numbers) {
        return view(by, require(by, claimId), numbers);
    }

    private SameAnimalElsewhereView view(Standing by, Mine mine, Map<AnimalId, String> numbers) {
        return new SameAnimalElsewhereView(
                mine.claim.id(),
                mine.record.number(),
                mine.own().toString(),
                numbers.get(mine.other()),
                mine.other().toString(),
                node(by, mine.other()),
                mine.claimedHere,
                mine.claim.claimedAt(),
                mine.claim.state().name().toLowerCase(Locale.ROOT));
    }

    private String node(Standing by, AnimalId id) {
        return federations.codeOfNode(by.populationId(), id.node()).orElse(id.node());
    }

    private static <T> T saying(Supplier<T> words) {
        try {
            return words.get();
        } catch (Refused refused) {
            throw refused.reason() == Refused.Reason.FENCED || refused.reason() == Refused.Reason.NOT_OPEN
                    ? new Refusal(
                            NODE_FENCED,
                            "This node was started anew and first hears from the other nodes how far it had come, so that nothing is said twice. Nothing is lost; try again in a few minutes, or ask the administrator which node is still awaited.")
                    : new Refusal(
                            CLAIM_ALREADY_ANSWERED,
                            "The claim has gone on meanwhile; read it again to see how it stands.");
        }
    }
}
