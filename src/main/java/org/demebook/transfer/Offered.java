package org.demebook.transfer;

import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A transfer that has begun.
 *
 * @param claimCode to be given to the buyer, shown this once; absent for an offer to a member
 */
@ShownTo(ShownTo.Whom.BOTH_SIDES)
public record Offered(TransferView transfer, @Nullable String claimCode) {
    @Override
    public String toString() {
        return "Offered[transfer=" + transfer.id() + "]"; // no code in a log
    }
}
