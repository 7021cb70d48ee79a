package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.problem.Finding;
import org.demebook.problem.LeftAsIs;
import org.demebook.problem.Rule;
import org.demebook.registry.FindingFacts.FindingLeft;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** What keepers left as it is, with their reasons. A finding that was left is not raised again for the same subject. */
@ApplicationScoped
public class LeftFindings {
    public static final String ANIMAL = "animal";
    public static final String LITTER = "litter";
    public static final String TRANSFER = "transfer";

    /**
     * A finding that was left; who left it is told to nobody but themselves.
     *
     * @param why why the rule is there
     * @param byYou whether the asker left it
     */
    public record LeftView(Rule rule, String message, String why, String reason, Instant leftAt, boolean byYou) {}

    @Inject
    Journal journal;

    /**
     * Records what a request leaves as it is, of what was found. Called once it is known that the request is saved.
     *
     * @param subjectKind {@link #ANIMAL}, {@link #LITTER}, {@link #TRANSFER} or a word of the room that has it
     */
    @Transactional(TxType.MANDATORY)
    public void record(
            Standing by,
            String subjectKind,
            UUID subjectId,
            Collection<Breach> breaches,
            @Nullable List<LeftAsIs> left) {
        for (var leaf : left == null ? List.<LeftAsIs>of() : left) {
            breaches.stream()
                    .filter(breach -> breach.isLeftBy(List.of(leaf)))
                    .map(Breach::finding)
                    .distinct()
                    .forEach(finding -> journal.record(
                            by.populationId(), by.keeperId(), fact(subjectKind, subjectId, finding, leaf.reason())));
        }
    }

    private static FindingLeft fact(String subjectKind, UUID subjectId, Finding finding, String reason) {
        var rule = Objects.requireNonNull(finding.rule());
        return new FindingLeft(
                Journal.newId(),
                subjectKind,
                subjectId,
                rule.word(),
                finding.level().name().toLowerCase(Locale.ROOT),
                finding.field(),
                finding.value(),
                finding.message(),
                reason.strip());
    }

    /** What was left before about some subjects. */
    static final class Settled {
        private final List<LeftFinding> left;

        private Settled(List<LeftFinding> left) {
            this.left = left;
        }

        /** The breaches that were not left for one of these subjects. */
        List<Breach> without(Collection<UUID> subjectIds, Collection<Breach> breaches) {
            return breaches.stream()
                    .filter(breach -> left.stream()
                            .noneMatch(one -> subjectIds.contains(one.subjectId) && one.settles(breach.finding())))
                    .toList();
        }
    }

    Settled settled(UUID populationId, Collection<UUID> subjectIds) {
        return new Settled(LeftFinding.about(populationId, subjectIds));
    }

    /**
     * The breaches that were not left before.
     *
     * @param subjectIds what they are about: the animal, its litter, the other one of two; a finding that was left for one
     *     of them is settled
     */
    @WholeRegister
    @Transactional
    public List<Breach> unsettled(UUID populationId, Collection<UUID> subjectIds, Collection<Breach> breaches) {
        return settled(populationId, subjectIds).without(subjectIds, breaches);
    }

    /** What was left about something; the room that has it has made sure that the asker may see it. */
    @WholeRegister
    @Transactional
    public List<LeftView> about(Standing by, Collection<UUID> subjectIds) {
        return LeftFinding.about(by.populationId(), subjectIds).stream()
                .flatMap(left -> Rule.of(left.rule)
                        .map(rule -> new LeftView(
                                rule,
                                left.message,
                                rule.why(),
                                left.reason,
                                left.leftAt,
                                left.leftBy.equals(by.keeperId())))
                        .stream())
                .toList();
    }
}
