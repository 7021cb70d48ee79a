package org.demebook.transfer;

import static org.demebook.problem.ProblemType.CLAIM_CODE_NOT_VALID;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.TRANSFER_TO_YOURSELF;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Accounts;
import org.demebook.keeper.Asker;
import org.demebook.keeper.CollectionView;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Role;
import org.demebook.keeper.Secret;
import org.demebook.keeper.Standing;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.Populations;
import org.demebook.transfer.TransferFacts.TransferClaimed;
import org.jspecify.annotations.Nullable;

/** How an animal that was handed out comes back into a collection: its buyer claims it, and joins the population with it. */
@ApplicationScoped
public class Claims {
    private static final String USUAL_LABEL = "My animals";

    @Inject
    Journal journal;

    @Inject
    Accounts accounts;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Populations populations;

    @Inject
    Days days;

    @Inject
    EntityManager entities;

    /**
     * Takes the animal over; the code is used up. Refuses with CLAIM_CODE_NOT_VALID alike when the code is mistyped, used,
     * renewed, withdrawn or out of date.
     *
     * @param signedIn null for somebody without an account: one is opened for them
     */
    @Transactional
    public Claimed claim(@Nullable Asker signedIn, Claim claim) {
        var code = Secret.asIssued(claim.code());
        var populationId = ClaimCode.populationOf(code).orElseThrow(Claims::notValid);
        var buyer = buyer(signedIn, claim); // hashes a password, so before the population is taken
        journal.open(populationId);
        // read again: whoever had the population before us may have used it
        var present = ClaimCode.of(code)
                .filter(found -> days.now().isBefore(found.expiresAt))
                .orElseThrow(Claims::notValid);
        var transfer = Transfer.of(populationId, present.transferId);
        requireNotTheGiver(signedIn, transfer);
        var animal = animals.custody(populationId, transfer.animalId);
        Transfers.requireNotMerged(animal);
        Disputes.requireUndisputed(animal);

        var by = join(buyer, transfer);
        var collection = collection(by, claim);
        journal.record(
                populationId, buyer.keeperId(), new TransferClaimed(transfer.id, buyer.keeperId(), collection.id()));
        present.delete();
        return new Claimed(
                by.populationCode(),
                animals.viewsInTransfer(by, List.of(transfer.animalId)).get(0),
                collection,
                signedIn == null ? accounts.tokenFor(buyer) : null);
    }

    /** Whether a code, as somebody typed it, is the present one of an animal that was handed out. */
    @Transactional
    public boolean leadsTo(UUID populationId, UUID animalId, String typed) {
        return ClaimCode.of(Secret.asIssued(typed))
                .filter(found ->
                        found.populationId.equals(populationId) && days.now().isBefore(found.expiresAt))
                .filter(found ->
                        Transfer.of(populationId, found.transferId).animalId.equals(animalId))
                .isPresent();
    }

    private static Refusal notValid() {
        return new Refusal(
                CLAIM_CODE_NOT_VALID,
                "The code is mistyped, used or out of date; ask the one who gave you the animal for a fresh one.");
    }

    private void requireNotTheGiver(@Nullable Asker signedIn, Transfer transfer) {
        if (signedIn != null
                && keepers.actsFor(transfer.populationId, signedIn.keeperId(), transfer.fromCollectionId)) {
            throw new Refusal(
                    TRANSFER_TO_YOURSELF, "You handed it out yourself; withdraw the transfer to take it back.");
        }
    }

    private Asker buyer(@Nullable Asker signedIn, Claim claim) {
        var findings = new ArrayList<Finding>();
        checkAccountField("name", claim.name(), signedIn, findings);
        checkAccountField("fullName", claim.fullName(), signedIn, findings);
        checkAccountField("password", claim.password(), signedIn, findings);
        if (!findings.isEmpty()) {
            throw new Refusal(
                    INVALID_VALUES,
                    signedIn == null
                            ? "Without a sign-in, name, fullName and password are needed to open an account; or sign in first."
                            : "You are signed in: leave name, fullName and password out, or sign out to open another account.",
                    findings);
        }
        return signedIn != null
                ? signedIn
                : accounts.open(
                        Objects.requireNonNull(claim.name()),
                        Objects.requireNonNull(claim.fullName()),
                        Objects.requireNonNull(claim.password()));
    }

    private static void checkAccountField(
            String field, @Nullable String value, @Nullable Asker signedIn, List<Finding> findings) {
        if (signedIn == null && (value == null || value.isBlank())) {
            findings.add(Finding.error(field, null, "is needed to open an account"));
        } else if (signedIn != null && value != null) {
            findings.add(Finding.error(field, null, "is not needed when you are signed in"));
        }
    }

    /** The giver's code is what lets a buyer in; it makes a member, nothing more. */
    private Standing join(Asker buyer, Transfer transfer) {
        if (!keepers.belongs(transfer.populationId, buyer.keeperId())) {
            keepers.join(transfer.populationId, transfer.offeredBy, buyer.keeperId(), Role.MEMBER);
            entities.flush();
        }
        return keepers.standing(buyer, populations.codeOf(transfer.populationId));
    }

    private CollectionView collection(Standing by, Claim claim) {
        if (claim.collection() != null || !keepers.collections(by).isEmpty()) {
            return keepers.collection(by, claim.collection());
        }
        var label =
                Objects.requireNonNullElse(claim.collectionLabel(), USUAL_LABEL).strip();
        return keepers.open(by.populationId(), by.keeperId(), label, List.of(by.keeperId()));
    }
}
