package org.demebook.web.litter;

import java.util.List;
import org.demebook.breeding.IntroductionView;
import org.demebook.keeper.CollectionView;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.web.breeding.Awaited;
import org.jspecify.annotations.Nullable;

/**
 * What a litter is entered with.
 *
 * @param awaited the females whose young are awaited, the most urgent first
 * @param otherFemales studbook numbers of the keeper's other living females
 * @param meetings introductions of the awaited ones, the latest first
 * @param males studbook numbers to offer when the sire is named: first those that were met
 * @param collections where the young may go, where there is a choice
 * @param rows the young that something is told of one by one
 */
public record Entry(
        List<Awaited> awaited,
        List<String> otherFemales,
        List<IntroductionView> meetings,
        List<String> males,
        List<CollectionView> collections,
        List<Row> rows) {

    /**
     * One of the live-born, in the order of the numbers that they get.
     *
     * @param place from 0, or a mark that a script puts the place in for
     * @param shown from 1, or the same mark
     * @param wrong what is wrong about it; null when nothing is
     */
    public record Row(
            String place,
            String shown,
            String sex,
            String reference,
            String mass,
            @Nullable String wrong) {}

    /** From which a script makes one for each of the live-born. */
    public Row getBlankRow() {
        return new Row("#", "##", "", "", "", null);
    }

    public List<Origin> getOrigins() {
        return List.of(Origin.CAPTIVE_BRED, Origin.UNKNOWN, Origin.WILD_CAUGHT);
    }

    public List<Sex> getSexes() {
        return List.of(Sex.FEMALE, Sex.MALE);
    }
}
