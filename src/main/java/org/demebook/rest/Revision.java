package org.demebook.rest;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.REVISION_MISSING;
import static org.demebook.problem.ProblemType.REVISION_OUTDATED;

import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.demebook.problem.Refusal;
import org.jspecify.annotations.Nullable;

/** A thing's revision is the sequence number of the journal entry that changed it last; its ETag is that number. */
public final class Revision {
    private Revision() {}

    public static EntityTag tag(long revision) {
        return new EntityTag(Long.toString(revision));
    }

    /**
     * An answer with an ETag of its own words, for who may not change it: that something else changed, which they do not see,
     * shows in nothing.
     */
    public static Response taggedByContent(Object view) {
        try {
            var digest =
                    MessageDigest.getInstance("SHA-256").digest(view.toString().getBytes(StandardCharsets.UTF_8));
            return Response.ok(view)
                    .tag(new EntityTag(HexFormat.of().formatHex(digest, 0, 8)))
                    .build();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** An answer whose ETag is wanted for a change. */
    public static Response tagged(Object view, long revision) {
        return Response.ok(view).tag(tag(revision)).build();
    }

    /**
     * Refuses a change that was not made on the present state.
     *
     * @param ifMatch the header as it was sent; null when it was not
     */
    public static void require(@Nullable String ifMatch, long present) {
        if (ifMatch == null) {
            throw new Refusal(
                    REVISION_MISSING,
                    "Read it first, then send the change with If-Match set to the ETag that you got.");
        }
        if (expected(ifMatch) != present) {
            throw new Refusal(
                    REVISION_OUTDATED,
                    "It was changed since you read it. Read it again, look at what is new, and send again.");
        }
    }

    private static long expected(String ifMatch) {
        var trimmed = ifMatch.strip();
        if (trimmed.matches("\"\\d{1,18}\"")) {
            return Long.parseLong(trimmed.substring(1, trimmed.length() - 1));
        }
        throw new Refusal(BAD_PARAMETER, "If-Match is the ETag of the answer that you changed, quotes included.");
    }
}
