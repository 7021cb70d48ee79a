package org.demebook.season;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Objects;
import java.util.stream.Stream;

/** Whether a form that was read from somewhere is one of a season. */
final class FormCheck {
    /** By how much sums of doubles may leave [0, 1]. */
    private static final double ROUNDING = 1e-9;

    private final SeasonForm form;

    FormCheck(SeasonForm form) {
        this.form = form;
    }

    /** @throws IllegalArgumentException that names what does not fit */
    void check() {
        complete();
        sizes();
        shares();
        numbers();
        pairs();
    }

    private void complete() {
        boolean whole = Stream.of(
                                form.kinship(),
                                form.toPool(),
                                form.young(),
                                form.allowed(),
                                form.littersOfMale(),
                                form.collection(),
                                form.littersOfCollection(),
                                form.travellersOfCollection(),
                                form.locked())
                        .allMatch(Objects::nonNull)
                && Arrays.stream(form.kinship()).allMatch(Objects::nonNull)
                && Arrays.stream(form.allowed()).allMatch(Objects::nonNull)
                && form.locked().stream().allMatch(Objects::nonNull);
        require(whole, "a part of the season is missing");
    }

    private void sizes() {
        int candidates = form.young().length + form.littersOfMale().length;
        same("rows of kinship", form.kinship().length, candidates);
        for (int row = 0; row < candidates; row++) {
            same("kinships in row " + row, form.kinship()[row].length, row + 1);
        }
        same("kinships to the pool", form.toPool().length, candidates);
        same("places where candidates live", form.collection().length, candidates);
        same("females with allowed males", form.allowed().length, form.young().length);
        same("limits on travellers", form.travellersOfCollection().length, form.littersOfCollection().length);
    }

    private void shares() {
        share("mean kinship of the pool", form.poolMeanKinship());
        for (double toPool : form.toPool()) {
            share("kinship to the pool", toPool);
        }
        for (double[] row : form.kinship()) {
            for (double kinship : row) {
                share("kinship", kinship);
            }
        }
    }

    private void numbers() {
        positive("animals in the pool", form.poolSize());
        for (double young : form.young()) {
            positive("young that count", young);
        }
        for (int home : form.collection()) {
            place("collection", home, form.littersOfCollection().length);
        }
        for (int[] limits : new int[][] {
            form.littersOfMale(), form.littersOfCollection(), form.travellersOfCollection(), {form.least(), form.most()}
        }) {
            for (int limit : limits) {
                require(limit >= 0, "a limit of " + limit + " is below 0");
            }
        }
        require(form.least() <= form.most(), "at least " + form.least() + " litters and at most " + form.most());
    }

    private void pairs() {
        for (int[] males : form.allowed()) {
            for (int i = 0; i < males.length; i++) {
                place("male", males[i], form.littersOfMale().length);
                require(i == 0 || males[i - 1] < males[i], "allowed males do not ascend: " + Arrays.toString(males));
            }
        }
        for (var pair : form.locked()) {
            place("female", pair.female(), form.young().length);
            place("male", pair.male(), form.littersOfMale().length);
        }
        require(new HashSet<>(form.locked()).size() == form.locked().size(), "a pair is settled twice");
    }

    private static void same(String what, int many, int expected) {
        require(many == expected, many + " " + what + " where " + expected + " are needed");
    }

    private static void share(String what, double share) {
        require(share >= 0 && share <= 1 + ROUNDING, "a " + what + " of " + share + " is not in [0, 1]");
    }

    private static void positive(String what, double number) {
        require(number > 0 && !Double.isInfinite(number), what + ": " + number + " is not above 0");
    }

    private static void place(String what, int at, int many) {
        require(at >= 0 && at < many, "there is no " + what + " " + at + " among " + many);
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
