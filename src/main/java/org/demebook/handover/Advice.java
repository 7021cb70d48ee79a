package org.demebook.handover;

import java.util.List;
import org.demebook.handover.HandoverSheet.Note;
import org.demebook.transfer.Kind;

/**
 * The sentences that stand on every sheet. The one on Salmonella follows what paediatric and food-safety bodies tell keepers
 * of reptiles, the one on gravid females the CITES advice to carriers; the travel temperature and the quarantine are common
 * practice with no source.
 */
final class Advice {
    static final String QUARANTINE = "Quarantine";
    static final String REPORT_BACK = "Please report back";
    static final String SALMONELLA = "Salmonella";
    static final String VETERINARIAN = "Veterinarian";
    static final String LAW = "Law";
    static final String TRANSPORT = "Transport";

    private Advice() {}

    static List<Note> notes(Kind kind, int daysOfQuarantine) {
        return List.of(
                new Note(
                        QUARANTINE,
                        "Keep it apart from your other reptiles for at least %d days, with its own tools, and have it tested before it meets them."
                                .formatted(daysOfQuarantine)),
                new Note(
                        REPORT_BACK,
                        kind.word().equals("breeding-loan")
                                ? "Its litters, its death, and whatever its owner should know at once; it goes back, or on, only as its owner says."
                                : "Its first litter, its death, and to whom it goes on: the register knows its ancestry as long as it knows where the number is."),
                new Note(
                        SALMONELLA,
                        "Reptiles can carry Salmonella without being ill: wash your hands after touching it, keep it out of kitchens; children under five, pregnant, old and immunocompromised people should not handle it."),
                new Note(VETERINARIAN, "With any sign of illness see a reptile veterinarian."),
                new Note(
                        LAW,
                        "Permits, certificates and bans differ by place and year: verify with your authority before it travels. This sheet is no permit and no proof of lawful origin."),
                new Note(
                        TRANSPORT,
                        "Common practice: 18 to 30 °C (64 to 86 °F) on the way, alone in a breathable bag in a rigid, ventilated box; no meal for some days before. A gravid female should not travel."));
    }

    static String ownership(Kind kind) {
        return switch (kind) {
            case SALE -> "Sold: it is the new keeper's own.";
            case GIFT -> "Given away: it is the new keeper's own.";
            case EXCHANGE -> "Exchanged: it is the new keeper's own.";
            case BREEDING_LOAN ->
                "On breeding loan: its owner stays its owner. Whose its young are is for the two of you to agree in writing.";
            case LOAN_RETURN -> "Back from a breeding loan to its owner.";
        };
    }
}
