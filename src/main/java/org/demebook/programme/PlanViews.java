package org.demebook.programme;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.programme.PlanDocument.Litter;
import org.demebook.programme.SeasonPlanView.IfRefused;
import org.demebook.programme.SeasonPlanView.Point;
import org.demebook.programme.SeasonPlanView.ProposedLitter;
import org.jspecify.annotations.Nullable;

/**
 * Shows plans to coordinators.
 *
 * @param name what an animal is called, if the reader may see it now
 * @param answers by litter
 */
record PlanViews(Function<UUID, Optional<String>> name, Map<UUID, List<LitterAnswer>> answers) {
    private static final double SAME = 1e-12;

    SeasonPlanView of(PlanDocument plan, @Nullable IssuedPlan issued, boolean inForce) {
        var figures = plan.figures();
        double after = figures.after().value();
        double bound = figures.bound().value();
        return new SeasonPlanView(
                plan.id(),
                plan.follows(),
                issued == null ? null : issued.issuedOn,
                inForce,
                plan.pairOn(),
                1 - figures.now().value(),
                1 - after,
                1 - figures.settledOnly().value(),
                living(plan),
                1 - bound,
                after <= bound ? 0 : after / bound - 1,
                figures.meanInbreeding().value(),
                figures.leastInbred(),
                figures.whole(),
                summary(plan),
                plan.litters().stream()
                        .flatMap(litter -> litter(litter).stream())
                        .toList(),
                plan.curve().stream()
                        .map(point -> new Point(
                                1 - point.meanKinship().value(),
                                point.meanInbreeding().value()))
                        .toList(),
                plan.inputDigest(),
                plan.work().seed());
    }

    private Optional<ProposedLitter> litter(Litter litter) {
        return name.apply(litter.damId()).flatMap(dam -> name.apply(litter.sireId())
                .map(sire -> new ProposedLitter(
                        litter.id(),
                        dam,
                        sire,
                        litter.keep(),
                        litter.young().value(),
                        litter.inbreeding().value(),
                        litter.adds().value(),
                        state(litter),
                        ifRefused(litter),
                        reason(litter, dam, sire))));
    }

    private static SeasonPlanView.@Nullable Living living(PlanDocument plan) {
        var living = plan.figures().living();
        return living == null
                ? null
                : new SeasonPlanView.Living(
                        1 - living.now().value(), 1 - living.after().value());
    }

    private LitterState state(Litter litter) {
        return LitterState.of(answers.getOrDefault(litter.id(), List.of()));
    }

    private static @Nullable IfRefused ifRefused(Litter litter) {
        var costs = litter.ifRefused();
        return costs == null
                ? null
                : new IfRefused(value(costs.thisPair()), value(costs.anyOfHers()), value(costs.anyOfHis()));
    }

    private static @Nullable Double value(@Nullable Exact exact) {
        return exact == null ? null : exact.value();
    }

    static String summary(PlanDocument plan) {
        var figures = plan.figures();
        int litters = plan.litters().size();
        if (litters == 0) {
            return "No litter would raise gene diversity under these constraints (now %s)."
                    .formatted(diversity(figures.now()));
        }
        double gap = figures.after().value() / figures.bound().value() - 1;
        return "%d %s: gene diversity %s → %s. %s The young are inbred by %s on average.%s"
                .formatted(
                        litters,
                        litters == 1 ? "litter" : "litters",
                        diversity(figures.now()),
                        diversity(figures.after()),
                        gap <= SAME
                                ? "No plan under these constraints keeps more."
                                : "Within %s %% of the best possible: no plan under these constraints keeps more than %s."
                                        .formatted(percent(gap), diversity(figures.bound())),
                        figure(figures.meanInbreeding().value()),
                        figures.whole()
                                ? ""
                                : " It was stopped before its time; a longer search may find a better one.");
    }

    private static String reason(Litter litter, String dam, String sire) {
        var sentences = new ArrayList<String>();
        double adds = litter.adds().value();
        sentences.add(
                adds > SAME
                        ? "Without a litter of %s and %s gene diversity would be lower by %s."
                                .formatted(dam, sire, figure(adds))
                        : "A litter of %s and %s adds nothing to gene diversity.".formatted(dam, sire));
        sentences.add(
                litter.inbreeding().value() <= SAME
                        ? "As far as is known they are unrelated."
                        : "They are related: their young would have an inbreeding coefficient of %s."
                                .formatted(figure(litter.inbreeding().value())));
        sentences.add(keep(litter.keep()));
        if (litter.settled()) {
            sentences.add("It is settled.");
        }
        return String.join(" ", sentences);
    }

    static String keep(int keep) {
        return switch (keep) {
            case 0 -> "Keep none of the young: each one kept would lower gene diversity.";
            case 1 -> "Aim to keep 1 of the young.";
            default -> "Aim to keep %d of the young.".formatted(keep);
        };
    }

    private static String diversity(Exact meanKinship) {
        return figure(1 - meanKinship.value());
    }

    static String figure(double value) {
        return String.format(Locale.ROOT, "%.4f", value);
    }

    /** Rounded up, so that it is never said to be nearer than it is. */
    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.3f", Math.ceil(share * 1e5) / 1e3);
    }
}
