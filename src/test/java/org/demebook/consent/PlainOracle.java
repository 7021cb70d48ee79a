package org.demebook.consent;

/**
 * Who may see what, said a second time and in another way: a table of plain words, with none of the code that it is held
 * against. Read off docs/consent.md: denied unless every party grants it, and any denial wins.
 */
final class PlainOracle {
    /** Somebody, as the one who decides about a record sees them. */
    enum Asker {
        HOLDS_IT,
        OWNS_IT,
        HOLDS_ANOTHER_ANIMAL,
        MEMBER,
        COORDINATOR,
        SIGNED_IN_ELSEWHERE,
        NOT_SIGNED_IN,
        NODE_H,
        NODE_K
    }

    /** One grant, in the words of the form. */
    record Line(
            String party,
            String to,
            boolean thisAnimal,
            String fieldGroups,
            String purposes,
            String actions,
            String state) {}

    private PlainOracle() {}

    static boolean allows(
            Asker asker, String parties, String fieldGroup, String purpose, String action, Iterable<Line> lines) {
        if (asker == Asker.HOLDS_IT || asker == Asker.OWNS_IT) {
            return true;
        }
        if (parties.isEmpty()) {
            return false;
        }
        for (String party : parties.split(" ")) {
            boolean granted = false;
            for (Line line : lines) {
                if (line.party().equals(party)
                        && line.state().equals("live")
                        && line.thisAnimal()
                        && listed(line.fieldGroups(), fieldGroup)
                        && listed(line.purposes(), purpose)
                        && listed(line.actions(), action)
                        && reaches(line.to(), asker)) {
                    granted = true;
                }
            }
            if (!granted) {
                return false;
            }
        }
        return true;
    }

    private static boolean listed(String words, String word) {
        return (" " + words + " ").contains(" " + word + " ");
    }

    private static boolean reaches(String to, Asker asker) {
        switch (to) {
            case "public":
                return true;
            case "members":
                return asker == Asker.MEMBER || asker == Asker.COORDINATOR || asker == Asker.HOLDS_ANOTHER_ANIMAL;
            case "coordinators":
                return asker == Asker.COORDINATOR;
            case "the member":
                return asker == Asker.MEMBER;
            case "the keeper of another animal":
                return asker == Asker.HOLDS_ANOTHER_ANIMAL;
            case "the one elsewhere":
                return asker == Asker.SIGNED_IN_ELSEWHERE;
            case "node H":
                return asker == Asker.NODE_H;
            default:
                throw new IllegalArgumentException(to);
        }
    }
}
