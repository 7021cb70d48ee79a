package org.demebook.consent;

import static org.demebook.consent.Action.COMPUTE;
import static org.demebook.consent.Action.PUBLISH_IN_AGGREGATE;
import static org.demebook.consent.Action.READ;
import static org.demebook.consent.FieldGroup.BREEDING_RESULTS;
import static org.demebook.consent.FieldGroup.COARSE_PLACE;
import static org.demebook.consent.FieldGroup.GENETICS;
import static org.demebook.consent.FieldGroup.HEALTH;
import static org.demebook.consent.FieldGroup.IDENTITY;
import static org.demebook.consent.FieldGroup.PARENTAGE;
import static org.demebook.consent.Purpose.PAIRING_COMPUTATION;
import static org.demebook.consent.Purpose.PEDIGREE_VIEW;
import static org.demebook.consent.Purpose.PUBLIC_COUNTS;
import static org.demebook.consent.Purpose.RECORD_KEEPING;
import static org.demebook.consent.Purpose.RESEARCH;
import static org.demebook.consent.Purpose.TRANSFER;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.demebook.consent.GrantFacts.GrantGiven;
import org.demebook.journal.Journal;

/**
 * What each ready choice grants; the same table stands in docs/consent.md. No choice shares custody, a place nearer than the
 * region, health or notes with anybody who could read them: keepers do not share those readily (common practice, no source).
 */
final class ReadyGrants {
    /** A line of the table. */
    record Line(Recipient recipient, List<FieldGroup> fieldGroups, List<Purpose> purposes, List<Action> actions) {
        GrantGiven given(UUID collectionId, ReadyChoice choice, Instant from) {
            return new GrantGiven(
                    Journal.newId(),
                    collectionId,
                    recipient,
                    null,
                    fieldGroups,
                    purposes,
                    actions,
                    from,
                    Notice.latestEnd(from),
                    null,
                    Notice.VERSION,
                    choice,
                    null);
        }
    }

    private static final List<Line> COMPUTED = List.of(
            new Line(
                    Recipient.MEMBERS,
                    List.of(IDENTITY, PARENTAGE, GENETICS),
                    List.of(PEDIGREE_VIEW, PAIRING_COMPUTATION),
                    List.of(COMPUTE)),
            new Line(
                    Recipient.PUBLIC,
                    List.of(IDENTITY, COARSE_PLACE, PARENTAGE, GENETICS),
                    List.of(PUBLIC_COUNTS),
                    List.of(COMPUTE, PUBLISH_IN_AGGREGATE)));

    private static final List<Line> PAIRED = List.of(
            new Line(Recipient.MEMBERS, List.of(COARSE_PLACE, HEALTH), List.of(PAIRING_COMPUTATION), List.of(COMPUTE)),
            new Line(
                    Recipient.MEMBERS,
                    List.of(IDENTITY, PARENTAGE, GENETICS),
                    List.of(RECORD_KEEPING, TRANSFER, PEDIGREE_VIEW, PAIRING_COMPUTATION),
                    List.of(READ)));

    private static final List<Line> OPEN = List.of(
            new Line(
                    Recipient.MEMBERS,
                    List.of(BREEDING_RESULTS),
                    List.of(PEDIGREE_VIEW, PAIRING_COMPUTATION),
                    List.of(READ, COMPUTE)),
            new Line(
                    Recipient.PUBLIC,
                    List.of(IDENTITY, PARENTAGE, GENETICS),
                    List.of(PEDIGREE_VIEW, RESEARCH),
                    List.of(READ, COMPUTE)));

    private ReadyGrants() {}

    /** The same for the members of another node: what a choice gives members here. What is public concerns every node anyway. */
    static List<Line> ofNode(ReadyChoice choice, String node) {
        return of(choice).stream()
                .filter(line -> line.recipient().equals(Recipient.MEMBERS))
                .map(line -> new Line(Recipient.node(node), line.fieldGroups(), line.purposes(), line.actions()))
                .toList();
    }

    /** Its lines; each choice has those of the one before it, and more. */
    static List<Line> of(ReadyChoice choice) {
        var lines = new ArrayList<Line>();
        switch (choice) {
            case PRIVATE -> {}
            case COMPUTE_ONLY -> lines.addAll(COMPUTED);
            case PAIRING_WITH_MEMBERS -> {
                lines.addAll(COMPUTED);
                lines.addAll(PAIRED);
            }
            case OPEN_PEDIGREE -> {
                lines.addAll(COMPUTED);
                lines.addAll(PAIRED);
                lines.addAll(OPEN);
            }
        }
        return lines;
    }
}
