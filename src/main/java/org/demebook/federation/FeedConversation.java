package org.demebook.federation;

import static org.demebook.problem.ProblemType.NOT_SHARED;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.UUID;
import org.demebook.peering.Conversation;
import org.demebook.problem.Refusal;
import org.demebook.protocol.FeedError;
import org.demebook.protocol.FeedError.Reason;
import org.demebook.protocol.PageForm;

/** What this node answers to peers. A population that is not here and one in which the peer has no seat are answered alike. */
@ApplicationScoped
class FeedConversation implements Conversation {
    private static final int NOT_FOUND = 404;
    private static final int CONFLICT = 409;
    private static final int TOO_LARGE = 413;

    @Inject
    Federations federations;

    @Inject
    SyncLoop loop;

    @Override
    public Reply entries(String askingNode, UUID population, String node, long after, int most, String start) {
        try {
            // its head is signed here where the journal has grown, and is durable before it leaves
            var page = federations.with(population, part -> part.entries(askingNode, node, after, most));
            return Reply.ok(PageForm.write(page));
        } catch (FeedError error) {
            return Reply.error(status(error.reason()), error.reason().word());
        } catch (Refusal refusal) {
            if (refusal.type() == NOT_SHARED || refusal.type() == NO_SUCH_POPULATION) {
                return Reply.error(NOT_FOUND, Reason.NOT_A_MEMBER.word());
            }
            throw refusal;
        }
    }

    private static int status(Reason reason) {
        return switch (reason) {
            case NOT_A_MEMBER, NO_SUCH_JOURNAL, ONLY_SIGNS_OF_IT -> NOT_FOUND;
            case CURSOR_FROM_THE_FUTURE -> CONFLICT;
            case TOO_MANY -> TOO_LARGE;
        };
    }

    @Override
    public Reply hint(String askingNode, UUID population) {
        loop.hinted(population, askingNode);
        return Reply.done();
    }
}
