package org.demebook.web.season;

import java.util.List;
import org.demebook.programme.LitterState;
import org.demebook.programme.PlanHeadingView;
import org.demebook.programme.RecommendationView;

/**
 * What a plan says to a keeper of their own animals.
 *
 * @param asked those with litters that the plan proposes
 * @param others the first of the rest
 * @param more how many of the rest are not among them
 * @param wanted how many litters wait for an answer of the keeper
 */
public record Recommended(
        PlanHeadingView plan, List<RecommendationView> asked, List<RecommendationView> others, long more, long wanted) {
    private static final int MOST_OTHERS = 40;

    static Recommended of(PlanHeadingView plan, List<RecommendationView> all) {
        var others = all.stream().filter(animal -> !hasLitters(animal)).toList();
        return new Recommended(
                plan,
                all.stream().filter(Recommended::hasLitters).toList(),
                others.stream().limit(MOST_OTHERS).toList(),
                Math.max(0, others.size() - MOST_OTHERS),
                all.stream()
                        .flatMap(animal -> animal.litters().stream())
                        .filter(litter -> litter.answer() == null && litter.state() == LitterState.OPEN)
                        .map(RecommendationView.Yours::litter)
                        .distinct()
                        .count());
    }

    private static boolean hasLitters(RecommendationView animal) {
        return !animal.litters().isEmpty();
    }

    public boolean isEmpty() {
        return asked.isEmpty() && others.isEmpty();
    }
}
