package org.demebook.web.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import org.demebook.crossing.CrossingView;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/** Where a crossing stands, in the words of the one who looks. */
@ApplicationScoped
class CrossingWords {
    @Inject
    Visit visit;

    @Inject
    Pages pages;

    List<CrossingRow> rows(Collection<CrossingView> crossings) {
        return crossings.stream().map(this::row).toList();
    }

    CrossingRow row(CrossingView crossing) {
        var inWords = crossing.given() ? toGiver(crossing) : toReceiver(crossing);
        return new CrossingRow(crossing, inWords, heard(crossing), lastDay(crossing));
    }

    /** Offers stand until the end of a day in UTC. */
    private static LocalDate lastDay(CrossingView crossing) {
        return LocalDate.ofInstant(crossing.expiresAt().minusMillis(1), ZoneOffset.UTC);
    }

    private String toGiver(CrossingView crossing) {
        var words = words();
        var to = Objects.requireNonNullElse(crossing.to(), words.aKeeper());
        var until = visit.day(lastDay(crossing));
        return switch (crossing.state()) {
            case OFFERED ->
                crossing.reach() != null && crossing.reach().fetched()
                        ? words.offeredFetched(to, crossing.node(), until)
                        : words.offeredUnfetched(to, crossing.node(), until);
            case ACCEPTED, ON_ITS_WAY -> words.onItsWay(to, crossing.node(), visit.day(crossing.movedAt()));
            case ARRIVED ->
                Boolean.TRUE.equals(crossing.nodeGone())
                        ? words.nodeGone(crossing.node(), visit.day(crossing.endedAt()))
                        : words.arrivedThere(to, crossing.node(), visit.day(crossing.endedAt()));
            case REFUSED -> words.refusedThere(to, visit.day(crossing.endedAt()));
            case WITHDRAWN -> words.withdrawnHere(visit.day(crossing.endedAt()));
            case EXPIRED -> words.expiredHere(crossing.node(), until);
        };
    }

    private String toReceiver(CrossingView crossing) {
        var words = words();
        var from = Objects.requireNonNullElse(crossing.from(), words.aKeeper());
        var until = visit.day(lastDay(crossing));
        return switch (crossing.state()) {
            case OFFERED -> words.offeredToYou(from, crossing.node(), until);
            case ACCEPTED, ON_ITS_WAY -> words.accepted(crossing.node(), visit.day(crossing.movedAt()));
            case ARRIVED -> words.arrivedHere(crossing.node(), visit.day(crossing.endedAt()));
            case REFUSED -> words.refusedHere(visit.day(crossing.endedAt()));
            case WITHDRAWN -> words.withdrawnThere(crossing.node(), visit.day(crossing.endedAt()));
            case EXPIRED -> words.expiredThere(crossing.node(), until);
        };
    }

    private @Nullable String heard(CrossingView crossing) {
        var reach = crossing.reach();
        if (reach == null) {
            return null;
        }
        return reach.heardAt() == null
                ? words().neverHeardOf(crossing.node())
                : words().heardOf(crossing.node(), visit.moment(reach.heardAt()));
    }

    private CrossingMessages words() {
        return pages.words(CrossingMessages.class);
    }
}
