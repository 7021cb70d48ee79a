package org.demebook.transfer;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import org.demebook.problem.LeftAsIs;
import org.jspecify.annotations.Nullable;

/**
 * An animal to be offered to a fellow member, or handed out to somebody who has no account yet.
 *
 * @param animal studbook number; it is in a collection of yours
 * @param to sign-in name of a fellow member; nothing with a claim code
 * @param withClaimCode true for a sale, gift or exchange with somebody who has no account: they take it over with a code
 * @param handedOverOn the day, when it was handed over already
 * @param expiresOn last day on which it can be accepted or claimed, at most a year ahead; nothing for 14 days, with a claim
 *     code 180 days
 * @param note what the receiver should know
 * @param leave what is as it is although a rule speaks against it
 */
public record NewTransfer(
        @NotNull @Size(max = 60) String animal,
        @NotNull Kind kind,
        @Nullable @Size(min = 1, max = 40) String to,
        @Nullable Boolean withClaimCode,
        @Nullable LocalDate handedOverOn,
        @Nullable LocalDate expiresOn,
        @Nullable @Size(max = 500) String note,
        @Nullable @Size(max = 20) List<@NotNull @Valid LeftAsIs> leave) {
    boolean handsOut() {
        return Boolean.TRUE.equals(withClaimCode);
    }
}
