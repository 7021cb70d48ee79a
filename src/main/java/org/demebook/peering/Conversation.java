package org.demebook.peering;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import java.util.regex.Pattern;

/**
 * What nodes tell each other, once it is settled who asks. Called on a worker thread, outside any transaction, with the id of an
 * active peer whose signature was verified; the arguments have the form that the wire demands.
 */
public interface Conversation {
    /**
     * Entries of a journal, for that peer.
     *
     * @param population id of the population
     * @param node id of the node whose journal it is
     * @param after sequence number of the last entry that the peer has; 0 for none
     * @param most 1 to {@link Limits#MOST_ENTRIES}
     * @param start what the peer was told to send with the next request; empty at first
     */
    Reply entries(String askingNode, UUID population, String node, long after, int most, String start);

    /** The peer has something new of that population. It may be lost, and costs little: the work is done elsewhere. */
    Reply hint(String askingNode, UUID population);

    /**
     * @param status 200, 204, or an error's
     * @param body canonical JSON; of an error {@code {"error":code}}
     */
    record Reply(int status, byte[] body) {
        private static final Pattern CODE = Pattern.compile("[a-z][a-z0-9-]{1,39}");

        public static Reply ok(byte[] canonicalJson) {
            return new Reply(200, canonicalJson);
        }

        public static Reply done() {
            return new Reply(204, new byte[0]);
        }

        /** @param code a word of a–z, 0–9 and hyphen, such as {@code cursor-too-old} */
        public static Reply error(int status, String code) {
            if (status < 400 || status > 599 || !CODE.matcher(code).matches()) {
                throw new IllegalArgumentException(status + " " + code);
            }
            return new Reply(status, ("{\"error\":\"" + code + "\"}").getBytes(StandardCharsets.US_ASCII));
        }
    }
}
