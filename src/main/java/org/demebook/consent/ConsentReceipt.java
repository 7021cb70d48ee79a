package org.demebook.consent;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A grant as a consent record in the four sections of ISO/IEC TS 27560:2023, to be kept by whoever gave it. Terms are those of
 * the W3C Data Privacy Vocabulary (DPV) and, for actions, of ODRL 2.2 beside it, where they have one.
 *
 * <p>Source: Data Privacy Vocabularies and Controls Community Group, <i>Consent Records and Receipts as per ISO/IEC TS
 * 27560:2023 using DPV</i>, final community group report of 1 August 2024; the technical specification itself was not read.
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record ConsentReceipt(Header header, Processing processing, List<Party> parties, List<Event> events) {
    /**
     * @param schema the profile that it follows
     * @param recordId of the grant
     * @param principal sign-in name of the keeper who consented; absent when they are gone
     * @param status what the consent is now, in DPV
     */
    public record Header(
            String schema,
            UUID recordId,
            Instant createdAt,
            @Nullable String principal,
            String status) {}

    /**
     * What was consented to.
     *
     * @param notice address of the notice
     * @param dataCategories the field groups
     * @param animals studbook numbers; absent for the whole collection
     * @param retention what becomes of it after it ends
     * @param jurisdiction as the one who runs the node has set it; absent when they have not
     */
    public record Processing(
            String notice,
            String noticeVersion,
            String language,
            String legalBasis,
            List<Term> purposes,
            List<FieldGroup> dataCategories,
            List<Term> operations,
            UUID collection,
            @Nullable List<String> animals,
            @Nullable String conditions,
            Instant from,
            Instant until,
            String storageLocation,
            String retention,
            @Nullable String jurisdiction,
            String withdrawalMethod) {}

    /**
     * A word of this API and what it is called elsewhere.
     *
     * @param dpv the nearest term of DPV
     * @param odrl the nearest action of ODRL; absent for a purpose, for which ODRL has none
     */
    public record Term(String word, String dpv, @Nullable String odrl) {}

    /**
     * @param role dpv:DataSubject, dpv:DataController or dpv:Recipient
     * @param kind of a recipient: keeper, members, coordinators, public or node
     */
    public record Party(
            String role,
            Recipient.@Nullable Kind kind,
            @Nullable String name) {}

    /**
     * @param state dpv:ConsentGiven, dpv:RenewedConsentGiven, dpv:ConsentWithdrawn, dpv:ConsentExpired or dpv:ConsentInvalidated
     * @param by sign-in name; absent where time did it, or when they are gone
     */
    public record Event(Instant at, String state, @Nullable String by) {}
}
