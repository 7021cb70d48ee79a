package org.demebook.web.handover;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import org.demebook.rearing.LeavingView;
import org.demebook.rearing.Readiness;
import org.demebook.rearing.Readiness.LeavingCondition;
import org.demebook.transfer.State;
import org.demebook.transfer.TransferView;
import org.demebook.web.Pages;
import org.demebook.web.Visit;

/** Where a transfer stands and what a young lacks, in the words of the one who looks. */
@ApplicationScoped
class Told {
    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Clock clock;

    List<TransferRow> rows(Collection<TransferView> transfers) {
        return transfers.stream().map(this::row).toList();
    }

    TransferRow row(TransferView transfer) {
        return new TransferRow(transfer, isOpen(transfer), inWords(transfer), lastDay(transfer));
    }

    /** An offer whose days are over is noted as expired a while later; it cannot be answered from that moment on. */
    private boolean isOpen(TransferView transfer) {
        return transfer.state().open() && !isOver(transfer);
    }

    private boolean isOver(TransferView transfer) {
        return transfer.state() == State.OFFERED && !Instant.now(clock).isBefore(transfer.expiresAt());
    }

    /** Offers stand until the end of a day in UTC. */
    private static LocalDate lastDay(TransferView transfer) {
        return LocalDate.ofInstant(transfer.expiresAt().minusMillis(1), ZoneOffset.UTC);
    }

    private String inWords(TransferView transfer) {
        var words = words();
        var from = Objects.requireNonNullElse(transfer.from(), words.somebodyGone());
        var to = Objects.requireNonNullElse(transfer.to(), words.somebodyGone());
        var until = visit.day(lastDay(transfer));
        var ended = visit.day(transfer.endedAt());
        if (isOver(transfer) || transfer.state() == State.EXPIRED) {
            return transfer.given() ? words.expiredGiven(to, until) : words.expiredReceived(from, until);
        }
        return switch (transfer.state()) {
            case OFFERED -> transfer.given() ? words.offeredGiven(to, until) : words.offeredReceived(from, until);
            case ACCEPTED -> transfer.given() ? words.acceptedGiven(to, ended) : words.acceptedReceived(from, ended);
            case REFUSED -> transfer.given() ? words.refusedGiven(to, ended) : words.refusedReceived(ended);
            case WITHDRAWN -> transfer.given() ? words.withdrawnGiven(ended) : words.withdrawnReceived(from, ended);
            case HANDED_OUT ->
                Instant.now(clock).isBefore(transfer.expiresAt())
                        ? words.handedOut(visit.day(transfer.offeredAt()), until)
                        : words.handedOutWithOldCode(visit.day(transfer.offeredAt()), until);
            case CLAIMED -> transfer.given() ? words.claimedGiven(to, ended) : words.claimedReceived(from, ended);
            case EXPIRED -> throw new IllegalStateException("told above");
        };
    }

    // ── readiness ────────────────────────────────────────────────────────────────────────────────────────────────────

    /**
     * What the readiness check asks for.
     *
     * @param name what it is about
     * @param reason what is known and what is asked for, as the register says it
     */
    public record Condition(String name, boolean met, boolean unknown, String reason) {}

    List<Condition> conditions(LeavingView leaving) {
        return leaving.conditions().stream()
                .map(condition -> new Condition(
                        name(condition),
                        condition.state() == Readiness.State.MET,
                        condition.state() == Readiness.State.UNKNOWN,
                        condition.reason()))
                .toList();
    }

    private String name(LeavingCondition condition) {
        var words = words();
        return switch (condition.name()) {
            case "age" -> words.ofAge();
            case "sheds" -> words.ofSheds();
            case "meals" -> words.ofMeals();
            case "last-meal" -> words.ofLastMeal();
            case "mass" -> words.ofMass();
            case "health" -> words.ofHealth();
            case "sex" -> words.ofSex();
            case "photograph" -> words.ofPhotograph();
            default -> condition.name();
        };
    }

    HandoverMessages words() {
        return pages.words(HandoverMessages.class);
    }
}
