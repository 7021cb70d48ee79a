package org.demebook.crossing;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import org.demebook.problem.LeftAsIs;
import org.demebook.transfer.Kind;
import org.jspecify.annotations.Nullable;

/**
 * An animal to be offered to a keeper on another node.
 *
 * @param animal studbook number; it is in a collection of yours, and your own
 * @param kind sale, gift or exchange
 * @param node code of the receiving node, as its studbook numbers bear it
 * @param to sign-in name there, as the receiver told you; nobody here can know whether there is one
 * @param handedOverOn the day, when it was handed over already
 * @param expiresOn last day on which it can be accepted, at most a year ahead; nothing for 14 days
 * @param note what the receiver should know
 * @param withName true: the receiver is told your sign-in name
 * @param withMarks false: its marks are not told
 * @param withTransponders false: its transponders are not told
 * @param withNotes true: the notes of its record go along
 * @param leave what is as it is although a rule speaks against it
 */
public record NewCrossing(
        @NotNull @Size(max = 60) String animal,
        @NotNull Kind kind,
        @NotNull @Size(min = 1, max = 4) String node,
        @NotNull @Size(min = 1, max = 40) String to,
        @Nullable LocalDate handedOverOn,
        @Nullable LocalDate expiresOn,
        @Nullable @Size(max = 500) String note,
        @Nullable Boolean withName,
        @Nullable Boolean withMarks,
        @Nullable Boolean withTransponders,
        @Nullable Boolean withNotes,
        @Nullable @Size(max = 20) List<@NotNull @Valid LeftAsIs> leave) {
    boolean isNamed() {
        return Boolean.TRUE.equals(withName);
    }

    boolean tellsMarks() {
        return !Boolean.FALSE.equals(withMarks);
    }

    boolean tellsTransponders() {
        return !Boolean.FALSE.equals(withTransponders);
    }

    boolean tellsNotes() {
        return Boolean.TRUE.equals(withNotes);
    }
}
