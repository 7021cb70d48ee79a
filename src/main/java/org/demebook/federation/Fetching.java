package org.demebook.federation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.peering.Peer;
import org.demebook.peering.PeerClient;
import org.demebook.peering.PeerTrouble;
import org.demebook.protocol.Cursor;
import org.demebook.protocol.FeedError;
import org.demebook.protocol.FeedPage;
import org.demebook.protocol.Intake;
import org.demebook.protocol.Intake.Outcome;
import org.demebook.protocol.PageForm;
import org.demebook.protocol.Participant;
import org.demebook.signing.Malformed;

/** Asks a peer for a journal, page after page. No transaction is open while the peer is asked. */
@ApplicationScoped
class Fetching {
    /** The part for which is fetched: in the database, or in memory alone. */
    interface Work {
        <T> T with(Function<Participant, T> work);
    }

    @Inject
    PeerClient client;

    /**
     * @param journal id of the node whose journal it is; of the peer's own also what others gave as digests
     * @return how many entries were taken in
     * @throws PeerTrouble if the peer gave no answer that says anything of the journal
     */
    int fetch(Work part, UUID population, Peer peer, String journal, Link link) {
        int taken = fetch(part, population, peer, link, participant -> Optional.of(participant.cursor(journal)));
        return journal.equals(peer.nodeId())
                ? taken + fetch(part, population, peer, link, participant -> participant.cursorAgain(journal))
                : taken;
    }

    private int fetch(Work part, UUID population, Peer peer, Link link, Function<Participant, Optional<Cursor>> place) {
        int taken = 0;
        while (true) {
            var asked = part.with(place);
            if (asked.isEmpty()) {
                return taken;
            }
            var cursor = asked.get();
            var began = System.nanoTime();
            int most = link.pageSize();
            var intake = page(part, population, peer, cursor, most, link);
            if (intake.isEmpty()) {
                continue; // asked for less now
            }
            taken += intake.get().taken();
            if (intake.get().taken() >= most) {
                link.cameIn(Duration.ofNanos(System.nanoTime() - began));
            }
            if (intake.get().outcome() != Outcome.TAKEN || !intake.get().more()) {
                return taken;
            }
        }
    }

    private Optional<Intake> page(Work part, UUID population, Peer peer, Cursor cursor, int most, Link link) {
        FeedPage page;
        try {
            page = PageForm.read(client.get(peer, target(population, cursor, most), PageForm.MOST_BYTES));
        } catch (PeerTrouble trouble) {
            if (isTooMuch(trouble) && link.shrink()) {
                return Optional.empty();
            }
            var reason = reason(trouble);
            if (reason.isEmpty() || reason.get() == FeedError.Reason.TOO_MANY) {
                throw trouble;
            }
            part.with(participant -> {
                participant.refused(peer.nodeId(), cursor, reason.get());
                return true;
            });
            if (reason.get() != FeedError.Reason.NO_SUCH_JOURNAL && reason.get() != FeedError.Reason.ONLY_SIGNS_OF_IT) {
                throw trouble;
            }
            return Optional.of(new Intake(Outcome.NOTHING_NEW, 0, false));
        } catch (Malformed malformed) {
            part.with(participant -> {
                participant.unreadable(peer.nodeId(), malformed);
                return true;
            });
            throw new PeerTrouble(
                    PeerTrouble.Kind.NOT_UNDERSTOOD, "%s gave a page in no accepted form.".formatted(peer.name()));
        }
        return Optional.of(part.with(participant -> participant.take(peer.nodeId(), cursor, page)));
    }

    static String target(UUID population, Cursor cursor, int most) {
        return "/federation/populations/%s/journals/%s/entries?after=%d&most=%d&start="
                .formatted(population, cursor.node(), cursor.after(), most);
    }

    private static boolean isTooMuch(PeerTrouble trouble) {
        return trouble.kind() == PeerTrouble.Kind.TIMED_OUT
                || trouble.kind() == PeerTrouble.Kind.ANSWER_TOO_LARGE
                || reason(trouble).filter(FeedError.Reason.TOO_MANY::equals).isPresent();
    }

    static Optional<FeedError.Reason> reason(PeerTrouble trouble) {
        for (var reason : FeedError.Reason.values()) {
            if (reason.word().equals(trouble.error().toLowerCase(Locale.ROOT))) {
                return Optional.of(reason);
            }
        }
        return Optional.empty();
    }
}
