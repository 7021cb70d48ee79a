package org.demebook;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Five founders, one of them over-used, a sixth that was never bred, and ten of their descendants, held by four keepers.
 * 001 to 005, 010 and 011 are dead. The fractions that tests expect of them were worked out in exact rational arithmetic
 * apart from this code.
 */
public final class Marrowfin {
    /** Holds 006. */
    public static final String OYELARAN = OUTSIDER;

    /** id, sire, dam; males and females below. */
    private static final int[][] DESCENDANTS = {
        {10, 2, 1},
        {11, 2, 1},
        {12, 4, 3},
        {13, 4, 3},
        {14, 2, 5},
        {20, 12, 10},
        {21, 11, 13},
        {22, 14, 10},
        {23, 11, 10},
        {24, 12, 10}
    };

    private static final Map<Integer, String> KEEPERS = Map.of(13, WREN, 23, WREN, 12, INES, 14, INES, 6, OYELARAN);

    public final Colony colony;
    private final Map<Integer, String> numbers = new HashMap<>();

    private Marrowfin() {
        colony = Colony.found();
        Colony.token(OYELARAN);
        colony.post(WREN, "/members", Map.of("name", OYELARAN, "role", "member"))
                .statusCode(200);
        colony.post(OYELARAN, "/collections", Map.of("label", "racks by the door"))
                .statusCode(201);
        colony.share(OYELARAN, "open-pedigree");
    }

    /** With the founder 006, alive and without young. */
    public static Marrowfin settled() {
        return settled(6, true);
    }

    /** The same, of whose animals nobody shows anything to anybody. */
    public static Marrowfin settledPrivate() {
        return settled(6, false);
    }

    /** Without the founder 006. */
    public static Marrowfin withoutUnusedFounder() {
        return settled(5, true);
    }

    private static Marrowfin settled(int founders, boolean shared) {
        var marrowfin = new Marrowfin();
        for (int id = 1; id <= founders; id++) {
            var founder = animal(id, null, id == 6 ? null : "2022");
            founder.put("origin", "wild-caught");
            marrowfin.register(id, founder);
        }
        for (int[] descendant : DESCENDANTS) {
            int id = descendant[0];
            var young = animal(id, id < 12 ? "2013" : id < 20 ? "2014-06-01" : "2019-07-01", id < 12 ? "2023" : null);
            young.put("origin", "captive-bred");
            young.put("dam", marrowfin.number(descendant[2]));
            young.put("sire", Map.of("kind", "known", "animal", marrowfin.number(descendant[1])));
            marrowfin.register(id, young);
        }
        if (!shared) {
            // parents are named by those who may see them, so it is only now that nobody does
            for (var keeper : List.of(WREN, INES, DOV, OYELARAN)) {
                marrowfin.colony.share(keeper, "private");
            }
        }
        return marrowfin;
    }

    private static Map<String, Object> animal(int id, String born, String died) {
        var female = id == 1 || id == 3 || id == 5 || id == 10 || id == 13 || id == 20 || id == 23;
        var animal = Colony.animal(female ? "female" : "male", born);
        if (died != null) {
            animal.put("died", died);
        }
        return animal;
    }

    private void register(int id, Map<String, Object> animal) {
        numbers.put(id, colony.register(holder(id), animal));
    }

    /** Who holds an animal; those that are not named above are with dov. */
    public static String holder(int id) {
        return KEEPERS.getOrDefault(id, DOV);
    }

    /** The studbook number of 001 to 024. */
    public String number(int id) {
        return numbers.get(id);
    }
}
