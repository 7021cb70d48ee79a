package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.UUID;
import org.demebook.signing.Signed;
import org.demebook.signing.SigningKey;

/**
 * One entry of a federated journal: {@code {"at","node","population","says","seq","type"}}, signed.
 *
 * @param at by the clock of the journal's node; to be shown, never to be decided by
 */
public record Entry(String node, UUID population, long seq, Instant at, Statement says, Signed signed) {
    static final String TYPE = "demebook-entry";

    /** Longest compact form, in characters. */
    public static final int MOST_CHARACTERS = 64 * 1024;

    private static final int HIGHEST_YEAR = 9999;

    static Entry sign(String node, UUID population, long seq, Instant now, Statement says, SigningKey key) {
        var at = now.truncatedTo(ChronoUnit.MILLIS);
        var payload = JsonNodeFactory.instance
                .objectNode()
                .put("at", at.toString())
                .put("node", node)
                .put("population", population.toString())
                .put("seq", seq)
                .put("type", StatementForm.typeOf(says));
        payload.set("says", StatementForm.write(says));
        var signed = Signed.sign(TYPE, payload, key);
        if (signed.compact().length() > MOST_CHARACTERS) {
            throw new Refused(Refused.Reason.MALFORMED, "This is more than an entry may hold.");
        }
        return new Entry(node, population, seq, at, says, signed);
    }

    static Entry read(String compact) {
        return read(Signed.parse(compact, MOST_CHARACTERS));
    }

    /** @throws BadStatement for any form but the accepted one; the signature is not looked at */
    static Entry read(Signed signed) {
        if (!signed.type().equals(TYPE)) {
            throw new BadStatement("is no entry but " + signed.type());
        }
        var fields = Fields.of(signed.payload());
        var at = instant(fields.text("at"));
        var node = fields.text("node");
        var population = fields.uuid("population");
        var seq = fields.number("seq", 1, Long.MAX_VALUE);
        var says = StatementForm.read(fields.text("type"), fields.object("says"));
        fields.end();
        return new Entry(node, population, seq, at, says, signed);
    }

    static Instant instant(String text) {
        try {
            var at = Instant.parse(text);
            if (at.toString().equals(text)
                    && at.atZone(java.time.ZoneOffset.UTC).getYear() <= HIGHEST_YEAR) {
                return at;
            }
        } catch (DateTimeException e) {
            // said below
        }
        throw new BadStatement("is no moment: " + text);
    }
}
