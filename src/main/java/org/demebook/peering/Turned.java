package org.demebook.peering;

/** A request of a node that gets no answer but a word; docs/federation/transport.md lists them. */
final class Turned extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient Conversation.Reply reply;

    Turned(int status, String error) {
        super(error, null, false, false);
        reply = Conversation.Reply.error(status, error);
    }

    Conversation.Reply reply() {
        return reply;
    }
}
