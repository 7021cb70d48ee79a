package org.demebook.peering;

import java.time.Duration;

/** How much nodes take from each other. Those of the wire stand in docs/federation/transport.md too. */
public final class Limits {
    /** Of a request's head: request line and headers. */
    public static final int MOST_HEAD_BYTES = 8_192;

    /** Of a request's path and query. */
    public static final int MOST_TARGET_BYTES = 2_048;

    /** Of a request's body: the longest chain of keys fits. */
    public static final int MOST_BODY_BYTES = 786_432;

    /** Of a node document, and of a chain of keys. */
    public static final int MOST_KEY_DOCUMENT_BYTES = 786_432;

    public static final int MOST_ENTRIES = 10_000;

    /** Requests of one peer at a time. */
    public static final int MOST_AT_A_TIME = 4;

    static final int MOST_CONNECTIONS = 256;
    static final int MOST_CONNECTIONS_FROM_ONE_ADDRESS = 32;

    /** Of one peer's answer with nothing but an error in it. */
    static final int MOST_ERROR_BYTES = 1_024;

    static final Duration CONNECTING = Duration.ofSeconds(5);

    /** From the request to the last byte of its answer. */
    static final Duration ANSWERING = Duration.ofSeconds(30);

    /** From the first byte of a connection to the end of its first request's head, and between requests. */
    static final Duration IDLE = Duration.ofSeconds(30);

    private Limits() {}
}
