package org.demebook.web.animal;

import java.util.List;
import org.demebook.ancestry.AncestryView;
import org.demebook.ancestry.ChartedAncestry;
import org.demebook.registry.LocalityView;
import org.jspecify.annotations.Nullable;

/**
 * Where an animal comes from, in figures.
 *
 * @param founder it was taken from the wild itself
 * @param parentsShown whether the one who looks may know its parents
 * @param inbreedingFraction empty where F is no fraction that people can read
 */
public record Descent(
        AncestryView figures,
        boolean founder,
        boolean parentsShown,
        String inbreedingFraction,
        List<Share> founders,
        LocalityView locality) {
    private static final double ROUNDING = 1e-6;

    /**
     * A founder's share of its genes.
     *
     * @param fraction empty where it is none that people can read
     */
    public record Share(String animal, double share, String fraction) {}

    /** What the founders' shares leave to 1; null where it is nothing. */
    public @Nullable Double getUnnamed() {
        return figures.unnamedContribution() > ROUNDING ? figures.unnamedContribution() : null;
    }

    static Descent of(ChartedAncestry charted, LocalityView locality) {
        var figures = charted.ancestry();
        var number = figures.animal().number();
        return new Descent(
                figures,
                charted.founders().contains(number),
                !charted.parentsNotShown().contains(number),
                figures.inbreedingBySire() == null ? Fraction.part(figures.inbreedingCoefficient()) : "",
                figures.founders().stream()
                        .map(founder -> new Share(
                                founder.animal(), founder.contribution(), Fraction.of(founder.contribution())))
                        .toList(),
                locality);
    }
}
