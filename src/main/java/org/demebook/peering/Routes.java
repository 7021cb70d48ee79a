package org.demebook.peering;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.demebook.peering.Conversation.Reply;
import org.jspecify.annotations.Nullable;

/** What can be asked of a node, by method and address. */
final class Routes {
    static final String NODE = "/federation/node";
    static final String KEYS = "/federation/keys";

    private static final String ID = "([0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12})";
    private static final Pattern ENTRIES =
            Pattern.compile("/federation/populations/" + ID + "/journals/([A-Za-z0-9_-]{43})/entries");
    private static final Pattern HINT = Pattern.compile("/federation/populations/" + ID + "/hint");
    private static final Pattern START = Pattern.compile("[A-Za-z0-9_.~-]{0,200}");

    private final Conversation conversation;

    Routes(Conversation conversation) {
        this.conversation = conversation;
    }

    /** @param speak with the id of the peer who asks */
    record Route(int mostBodyBytes, BiFunction<String, byte[], Reply> speak) {}

    /** @throws Turned where there is nothing at that address */
    Route find(String method, String target) {
        var question = target.indexOf('?');
        var path = question < 0 ? target : target.substring(0, question);
        var query = question < 0 ? null : target.substring(question + 1);
        var entries = ENTRIES.matcher(path);
        if (method.equals("GET") && entries.matches()) {
            return entries(entries, query);
        }
        var hint = HINT.matcher(path);
        if (method.equals("POST") && hint.matches() && query == null) {
            var population = UUID.fromString(hint.group(1));
            return new Route(0, (peer, body) -> conversation.hint(peer, population));
        }
        throw new Turned(404, "no-such-address");
    }

    private Route entries(Matcher path, @Nullable String query) {
        var population = UUID.fromString(path.group(1));
        var node = path.group(2);
        var parameters = parameters(query);
        var after = number(parameters.remove("after"), 0, 0, (1L << 53) - 1);
        var most = (int) number(parameters.remove("most"), Limits.MOST_ENTRIES, 1, Limits.MOST_ENTRIES);
        var said = parameters.remove("start");
        var start = said == null ? "" : said;
        if (!parameters.isEmpty() || !START.matcher(start).matches()) {
            throw new Turned(400, "malformed-request");
        }
        return new Route(0, (peer, body) -> conversation.entries(peer, population, node, after, most, start));
    }

    /** Nothing is escaped in what is allowed here, and nothing comes twice. */
    private static Map<String, String> parameters(@Nullable String query) {
        var found = new HashMap<String, String>();
        if (query == null) {
            return found;
        }
        for (var pair : query.split("&", -1)) {
            int equals = pair.indexOf('=');
            if (equals < 0 || found.put(pair.substring(0, equals), pair.substring(equals + 1)) != null) {
                throw new Turned(400, "malformed-request");
            }
        }
        return found;
    }

    private static long number(@Nullable String digits, long absent, long least, long most) {
        if (digits == null) {
            return absent;
        }
        if (!digits.matches("0|[1-9][0-9]{0,15}")) {
            throw new Turned(400, "malformed-request");
        }
        long number = Long.parseLong(digits);
        if (number < least || number > most) {
            throw new Turned(400, "malformed-request");
        }
        return number;
    }

    /** For logs: of a target only what cannot be anything but an address of ours. */
    static String shown(String target) {
        var bytes = target.getBytes(StandardCharsets.UTF_8);
        return target.matches("[A-Za-z0-9/_.?=&~-]{1,300}") ? target : "an address of %d bytes".formatted(bytes.length);
    }
}
