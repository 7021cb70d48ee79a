package org.demebook.rest;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;

import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.problem.Refusal;
import org.jspecify.annotations.Nullable;

/**
 * A page of a list.
 *
 * @param items at most as many as were asked for
 * @param next cursor of the following page, to be sent back unread as {@code after}; null on the last one
 */
public record Page<T>(List<T> items, @Nullable String next) {
    public static final int MOST = 200;
    public static final int USUAL = 50;

    /**
     * Cuts a page from a list that was read with one item too many.
     *
     * @param read up to {@code limit + 1} items in order
     * @param key what the following page starts after
     */
    public static <T> Page<T> of(List<T> read, int limit, Function<T, String> key) {
        if (read.size() <= limit) {
            return new Page<>(List.copyOf(read), null);
        }
        var items = List.copyOf(read.subList(0, limit));
        return new Page<>(items, cursor(key.apply(items.get(limit - 1))));
    }

    /** How many items are wanted: 1 to {@value #MOST}, {@value #USUAL} when nothing is said. */
    public static int limit(@Nullable Integer asked) {
        if (asked == null) {
            return USUAL;
        }
        if (asked < 1 || asked > MOST) {
            throw new Refusal(BAD_PARAMETER, "limit is %d; ask for 1 to %d items a page.".formatted(asked, MOST));
        }
        return asked;
    }

    /** What the cursor stands for; null when there is none. */
    public static @Nullable String after(@Nullable String cursor) {
        if (cursor == null) {
            return null;
        }
        try {
            return new String(Base64.getUrlDecoder().decode(cursor), StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            throw notOfThisList();
        }
    }

    /** The id that a cursor stands for, in a list that is read in the order of ids. */
    public static UUID id(String after) {
        try {
            return UUID.fromString(after);
        } catch (IllegalArgumentException e) {
            throw notOfThisList();
        }
    }

    /** The sequence number that a cursor stands for, in a list that is read in that order. */
    public static long number(String after) {
        try {
            return Long.parseLong(after);
        } catch (NumberFormatException e) {
            throw notOfThisList();
        }
    }

    private static Refusal notOfThisList() {
        return new Refusal(
                BAD_PARAMETER, "after is not a cursor of this list; take it from next of the page before, unchanged.");
    }

    private static String cursor(String key) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(key.getBytes(StandardCharsets.UTF_8));
    }

    /** This page as a response, with the Link header of RFC 8288 to the next one. */
    public Response response(UriInfo uri) {
        var response = Response.ok(this);
        if (next != null) {
            var following =
                    uri.getRequestUriBuilder().replaceQueryParam("after", next).build();
            var relative = following.getRawPath() + "?" + following.getRawQuery();
            response.header("Link", "<" + relative + ">; rel=\"next\"");
        }
        return response.build();
    }
}
