package org.demebook.consent;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.consent.ConsentReceipt.Event;
import org.demebook.consent.ConsentReceipt.Header;
import org.demebook.consent.ConsentReceipt.Party;
import org.demebook.consent.ConsentReceipt.Processing;
import org.demebook.consent.ConsentReceipt.Term;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** Writes grants as consent records. */
@ApplicationScoped
public class Receipts {
    static final String SCHEMA = "https://w3id.org/dpv/schema/dpv-27560#receipt-record";

    @Inject
    Grants grants;

    @Inject
    Keepers keepers;

    @Inject
    Journal journal;

    @ConfigProperty(name = "demebook.jurisdiction")
    Optional<String> jurisdiction;

    @Transactional
    public ConsentReceipt of(Standing by, UUID grantId) {
        var grant = grants.get(by, grantId);
        var row = grants.own(by, grantId);
        var withdrawnBy = row.withdrawnBy == null
                ? null
                : keepers.names(Set.of(row.withdrawnBy)).get(row.withdrawnBy);
        return new ConsentReceipt(
                new Header(SCHEMA, grant.id(), grant.givenAt(), grant.givenBy(), status(grant)),
                processing(by, grant),
                List.of(
                        new Party("dpv:DataSubject", null, grant.givenBy()),
                        new Party("dpv:DataController", null, "node " + journal.nodeCode()),
                        new Party("dpv:Recipient", grant.recipient().kind(), recipientName(grant))),
                events(grant, withdrawnBy));
    }

    private Processing processing(Standing by, GrantView grant) {
        return new Processing(
                Notice.PATH,
                grant.noticeVersion(),
                Notice.LANGUAGE,
                "dpv:ExplicitlyExpressedConsent",
                grant.purposes().stream()
                        .map(purpose -> new Term(purpose.word(), dpv(purpose), null))
                        .toList(),
                grant.fieldGroups(),
                grant.actions().stream()
                        .map(action -> new Term(action.word(), dpv(action), odrl(action)))
                        .toList(),
                grant.collection(),
                grant.animals(),
                grant.conditions(),
                grant.from(),
                grant.until(),
                "node " + journal.nodeCode(),
                "nothing is shown after the end; the grant itself stays in the journal of the population",
                jurisdiction.orElse(null),
                "POST /api/v1/populations/%s/grants/%s/withdrawal".formatted(by.populationCode(), grant.id()));
    }

    private static @Nullable String recipientName(GrantView grant) {
        var recipient = grant.recipient();
        return recipient.name() != null ? recipient.name() : recipient.node();
    }

    private static List<Event> events(GrantView grant, @Nullable String withdrawnBy) {
        var events = new ArrayList<Event>();
        events.add(new Event(
                grant.givenAt(),
                grant.renews() == null ? "dpv:ConsentGiven" : "dpv:RenewedConsentGiven",
                grant.givenBy()));
        switch (grant.state()) {
            case WITHDRAWN -> events.add(new Event(orUntil(grant.withdrawnAt(), grant), status(grant), withdrawnBy));
            case SUPERSEDED -> events.add(new Event(orUntil(grant.supersededAt(), grant), status(grant), null));
            case EXPIRED -> events.add(new Event(grant.until(), status(grant), null));
            case NOT_YET, LIVE -> {}
        }
        return events;
    }

    private static Instant orUntil(@Nullable Instant end, GrantView grant) {
        return end == null ? grant.until() : end;
    }

    /** DPV has no word for a consent in whose place another stands; invalidated is the nearest, since it justifies nothing more. */
    private static String status(GrantView grant) {
        return switch (grant.state()) {
            case NOT_YET, LIVE -> grant.renews() == null ? "dpv:ConsentGiven" : "dpv:RenewedConsentGiven";
            case WITHDRAWN -> "dpv:ConsentWithdrawn";
            case EXPIRED -> "dpv:ConsentExpired";
            case SUPERSEDED -> "dpv:ConsentInvalidated";
        };
    }

    static String dpv(Purpose purpose) {
        return switch (purpose) {
            case RECORD_KEEPING -> "dpv:RecordManagement";
            case RESEARCH -> "dpv:ResearchAndDevelopment";
            case TRANSFER, PEDIGREE_VIEW, PAIRING_COMPUTATION -> "dpv:ServiceProvision";
            case PUBLIC_COUNTS -> "dpv:Purpose";
        };
    }

    static String dpv(Action action) {
        return switch (action) {
            case READ -> "dpv:Consult";
            case COMPUTE -> "dpv:Analyse";
            case RELAY -> "dpv:Transmit";
            case PUBLISH_IN_AGGREGATE -> "dpv:Disseminate";
        };
    }

    static String odrl(Action action) {
        return switch (action) {
            case READ -> "odrl:read";
            case COMPUTE -> "odrl:derive";
            case RELAY -> "odrl:distribute";
            case PUBLISH_IN_AGGREGATE -> "odrl:aggregate";
        };
    }
}
