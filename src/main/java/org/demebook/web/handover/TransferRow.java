package org.demebook.web.handover;

import java.time.LocalDate;
import org.demebook.transfer.Kind;
import org.demebook.transfer.State;
import org.demebook.transfer.TransferView;

/**
 * A transfer as a page tells it.
 *
 * @param open it can still be answered, or claimed
 * @param inWords where it stands, for the one who looks
 * @param until the last day on which it can be answered, or claimed with the present code
 */
public record TransferRow(TransferView transfer, boolean open, String inWords, LocalDate until) {
    /** Whether the one who looks is to answer. */
    public boolean isWaiting() {
        return open && !transfer.given();
    }

    public String getNumber() {
        return transfer.animal().number();
    }

    /** Whether it is out with a claim code. */
    public boolean isHandedOut() {
        return transfer.state() == State.HANDED_OUT;
    }

    /** Whether it goes into a collection that the receiver names; from a loan it goes back to where it came from. */
    public boolean isChoosingPlace() {
        return transfer.kind() != Kind.LOAN_RETURN;
    }

    /** Whether the animal went to the other side, or came. */
    public boolean isDone() {
        return transfer.state() == State.ACCEPTED || transfer.state() == State.CLAIMED;
    }
}
