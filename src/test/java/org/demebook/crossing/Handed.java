package org.demebook.crossing;

import java.util.List;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.protocol.AnimalId;
import org.demebook.registry.LocalityClaim;
import org.demebook.transfer.Kind;

/** Records that another node hands over. */
public final class Handed {
    private Handed() {}

    /** The same, as it is sent. */
    public static com.fasterxml.jackson.databind.node.ObjectNode json(
            String addressee, String population, String node, long serial, AnimalId animal) {
        return to(addressee, population, node, serial, animal).json();
    }

    /** A female of that node, with one known parent, to somebody here. */
    static HandedRecord to(String addressee, String population, String node, long serial, AnimalId animal) {
        var dam = new AnimalId(new java.util.UUID(serial, 1), animal.node());
        return new HandedRecord(
                addressee,
                "mara",
                Kind.SALE,
                null,
                "eats well",
                new StudbookNumber(population, node, serial),
                Sex.FEMALE,
                RoughDate.parse("2025-06-29"),
                Origin.CAPTIVE_BRED,
                null,
                false,
                new LocalityClaim("Marrowfin Cay", LocalityClaim.Certainty.STATED),
                List.of("981000000%06d".formatted(serial)),
                List.of("split saddle"),
                "shy",
                List.of(
                        new HandedRecord.Forebear(animal, null, Sex.FEMALE, 2025, dam, List.of(), false),
                        new HandedRecord.Forebear(
                                dam,
                                new StudbookNumber(population, node, serial + 1),
                                Sex.FEMALE,
                                2019,
                                null,
                                List.of(),
                                true)));
    }
}
