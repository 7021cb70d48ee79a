package org.demebook.web.rearing;

import java.util.Comparator;
import java.util.List;
import org.demebook.rearing.LitterBoard;
import org.jspecify.annotations.Nullable;

/**
 * The young of a litter, as their board shows them.
 *
 * @param address of the board
 * @param daysOld null where the birth is not known to the day
 * @param cards by need
 */
public record Board(
        LitterBoard litter, String address, @Nullable Integer daysOld, List<YoungCard> cards) {
    /** Those that the asker writes of. */
    public List<YoungCard> inHand() {
        return cards.stream().filter(YoungCard::isInHand).toList();
    }

    /** The same in the order of their numbers, as they stand in the rack. */
    public List<YoungCard> inOrder() {
        return inHand().stream()
                .sorted(Comparator.comparing(card -> litter.young().indexOf(card.row())))
                .toList();
    }

    public long alive() {
        return cards.stream().filter(card -> card.row().alive()).count();
    }

    public long behind() {
        return cards.stream().filter(YoungCard::isBehind).count();
    }

    public long ready() {
        return cards.stream().filter(card -> card.row().ready()).count();
    }
}
