package org.demebook.handover;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.ANIMAL_MERGED;
import static org.demebook.problem.ProblemType.CLAIM_CODE_NOT_VALID;
import static org.demebook.problem.ProblemType.HANDOVER_SHEET_ALTERED;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_HANDOVER_SHEET;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.demebook.ancestry.Ancestries;
import org.demebook.ancestry.AncestryView;
import org.demebook.handover.HandoverSheet.Identity;
import org.demebook.handover.SheetFacts.SheetIssued;
import org.demebook.handover.SheetFacts.SheetWithdrawn;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Role;
import org.demebook.keeper.Secret;
import org.demebook.keeper.Standing;
import org.demebook.notation.Words;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.Custody;
import org.demebook.registry.Populations;
import org.demebook.transfer.Claims;
import org.demebook.transfer.Ending;
import org.demebook.transfer.Kind;
import org.demebook.transfer.State;
import org.demebook.transfer.TransferView;
import org.demebook.transfer.Transfers;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** The hand-over sheets of the populations on this node. */
@ApplicationScoped
public class HandoverSheets {
    /** Transfers by which somebody receives the animal, or is about to. */
    private static final List<State> RECEIVED = List.of(State.OFFERED, State.ACCEPTED, State.CLAIMED);

    /** A member who holds nothing: sees of an animal what all members see. */
    private static final UUID NOBODY = new UUID(0, 0);

    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Populations populations;

    @Inject
    Transfers transfers;

    @Inject
    Claims claims;

    @Inject
    Ancestries ancestries;

    @Inject
    SheetWriter writer;

    @Inject
    Address address;

    // ── issuing ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** The figures that a sheet will show; computed before the transaction that issues it. */
    public AncestryView figures(Standing by, String number) {
        return ancestries.ancestry(by, number, 0);
    }

    /** Issues a sheet of an animal in the asker's hands, or handed out by them. */
    @Transactional
    public HandoverSheetView issue(Standing by, String number, NewHandoverSheet wanted, AncestryView figures) {
        journal.open(by.populationId());
        var known = animals.custody(by, number);
        var transfer = transfers.openOf(by, known.id()).filter(TransferView::given);
        var fromCollectionId = giver(by, known, transfer);
        if (known.merged()) {
            throw new Refusal(
                    ANIMAL_MERGED,
                    "%s was found to be an animal with another number; issue the sheet of that one."
                            .formatted(known.number()));
        }
        var kind = kind(wanted, transfer);
        var sheet = writer.write(by, animals.get(by, number), kind, Boolean.TRUE.equals(wanted.showName()), figures);
        var words = SheetDigest.bytes(sheet);
        new SheetWords(by.populationId(), sheet.id(), words).persist();
        journal.record(
                by.populationId(),
                by.keeperId(),
                new SheetIssued(sheet.id(), known.id(), fromCollectionId, SheetDigest.of(words)));
        return view(by, IssuedSheet.of(by.populationId(), sheet.id()));
    }

    /** The collection that gives: where the animal is, or, once it was handed out, from where. */
    private UUID giver(Standing by, Custody known, Optional<TransferView> transfer) {
        if (known.collectionId() == null && transfer.isPresent()) {
            if (known.died() != null) {
                throw new Refusal(ANIMAL_DEAD, "%s died on %s.".formatted(known.number(), known.died()));
            }
            return Objects.requireNonNull(transfer.get().fromCollection());
        }
        return Objects.requireNonNull(animals.inHand(by, known.number()).collectionId());
    }

    private static Kind kind(NewHandoverSheet wanted, Optional<TransferView> transfer) {
        var ofTransfer = transfer.map(TransferView::kind).orElse(null);
        if (wanted.kind() == null && ofTransfer == null) {
            throw new Refusal(
                    INVALID_VALUES,
                    "Say how the animal changes hands (kind: %s), or offer it first."
                            .formatted(String.join(
                                    ", ",
                                    Arrays.stream(Kind.values()).map(Kind::word).toList())));
        }
        if (wanted.kind() != null && ofTransfer != null && wanted.kind() != ofTransfer) {
            throw new Refusal(
                    INVALID_VALUES,
                    "It is in a transfer as %s, the sheet would say %s; leave kind out, or withdraw that transfer."
                            .formatted(ofTransfer.word(), wanted.kind().word()));
        }
        return ofTransfer == null ? Objects.requireNonNull(wanted.kind()) : ofTransfer;
    }

    /** Takes a sheet back; by those who act for the collection that issued it. A second time changes nothing. */
    @Transactional
    public HandoverSheetView withdraw(Standing by, UUID sheetId, Ending ending) {
        journal.open(by.populationId());
        var sheet = require(by, sheetId);
        if (!keepers.actsFor(by.populationId(), by.keeperId(), sheet.fromCollectionId)) {
            throw new Refusal(NOT_ALLOWED, "Only who issued the sheet withdraws it; issue one of your own.");
        }
        if (sheet.withdrawnAt == null) {
            journal.record(
                    by.populationId(), by.keeperId(), new SheetWithdrawn(sheetId, Words.orNull(ending.reason())));
        }
        return view(by, sheet);
    }

    // ── reading ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** One sheet; refuses with NO_SUCH_HANDOVER_SHEET alike when there is none and when it is not for the asker to read. */
    @Transactional
    public HandoverSheetView get(Standing by, UUID sheetId) {
        return view(by, require(by, sheetId));
    }

    /** Whether it is the asker's to withdraw: they act for the collection that issued it. */
    @Transactional
    public boolean issuedBy(Standing by, UUID sheetId) {
        return keepers.actsFor(by.populationId(), by.keeperId(), require(by, sheetId).fromCollectionId);
    }

    /** The sheets of an animal that the asker may read, the latest first. */
    @Transactional
    public List<HandoverSheetView> of(Standing by, String number) {
        return IssuedSheet.seenOf(who(by), animals.custody(by, number).id()).stream()
                .map(sheet -> view(by, sheet))
                .toList();
    }

    /**
     * A sheet as it is printed; refuses with HANDOVER_SHEET_ALTERED what is not as it was issued.
     *
     * @param claimCode the present one of an animal that was handed out, as the giver got it; the register has its hash
     *     alone, so it is printed only from here. Null: none
     */
    @Transactional
    public SheetText print(Standing by, UUID sheetId, @Nullable String claimCode) {
        var sheet = require(by, sheetId);
        if (claimCode != null && !claims.leadsTo(by.populationId(), sheet.animalId, claimCode)) {
            throw new Refusal(
                    CLAIM_CODE_NOT_VALID,
                    "This is not the present claim code of the animal on the sheet; get a fresh one from its transfer.");
        }
        var view = view(by, sheet);
        if (view.says() == null) {
            throw new Refusal(
                    HANDOVER_SHEET_ALTERED,
                    "The words of sheet %s are not on this node as they were issued; issue a fresh sheet."
                            .formatted(sheetId));
        }
        return SheetText.of(
                view.says(), view, claimCode == null ? null : Secret.asIssued(claimCode), address.ofClaims());
    }

    /** What whoever has the paper learns of it; refuses with NO_SUCH_HANDOVER_SHEET. Needs no standing. */
    @WholeRegister
    @Transactional
    public SheetCheck check(String typedCode) {
        var code = Secret.asIssued(typedCode);
        var sheet = IssuedSheet.of(code)
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_HANDOVER_SHEET,
                        "No sheet of this register has the code %s. Is it typed as it is printed?".formatted(code)));
        var nobody = new Standing(
                sheet.populationId, populations.codeOf(sheet.populationId), NOBODY, Role.MEMBER, sheet.issuedSeq);
        var words = SheetWords.of(sheet);
        var state = state(nobody, sheet, words);
        var identity =
                state.genuine() ? words.map(SheetWords::read).map(HandoverSheet::identity) : Optional.<Identity>empty();
        return new SheetCheck(
                state.genuine(),
                state,
                state.inWords(),
                animals.custody(sheet.populationId, sheet.animalId).number(),
                sheet.issuedAt.atZone(ZoneOffset.UTC).toLocalDate(),
                identity.map(Identity::dam).orElse(null),
                identity.map(Identity::sire).map(InWords::sire).orElse(null),
                sheet.digest,
                sheet.code);
    }

    private IssuedSheet require(Standing by, UUID sheetId) {
        return IssuedSheet.seen(who(by), sheetId)
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_HANDOVER_SHEET,
                        "There is no hand-over sheet %s among those that you may read.".formatted(sheetId)));
    }

    private Map<String, Object> who(Standing by) {
        return Map.of(
                "population",
                by.populationId(),
                "own",
                keepers.collectionIds(by),
                "keeper",
                by.keeperId(),
                "received",
                RECEIVED);
    }

    private HandoverSheetView view(Standing by, IssuedSheet sheet) {
        var words = SheetWords.of(sheet);
        var state = state(by, sheet, words);
        return new HandoverSheetView(
                sheet.id,
                animals.custody(sheet.populationId, sheet.animalId).number(),
                state,
                sheet.code,
                address.of(sheet.code),
                sheet.digest,
                sheet.issuedAt,
                sheet.withdrawnAt,
                sheet.reason,
                sheet.revision,
                state.genuine() ? words.map(SheetWords::read).orElse(null) : null);
    }

    private SheetState state(Standing by, IssuedSheet sheet, Optional<SheetWords> words) {
        if (words.isEmpty()) {
            return SheetState.ERASED;
        }
        if (!words.get().areThoseOf(sheet)) {
            return SheetState.ALTERED;
        }
        if (sheet.withdrawnAt != null) {
            return SheetState.WITHDRAWN;
        }
        if (sheet.superseded()) {
            return SheetState.SUPERSEDED;
        }
        var animal = animals.viewsInTransfer(by, List.of(sheet.animalId)).get(0);
        boolean same =
                animal.sameAs() == null && SheetDigest.same(words.get().read().identity(), writer.identity(by, animal));
        return same ? SheetState.CURRENT : SheetState.OUTDATED;
    }
}
