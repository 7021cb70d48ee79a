package org.demebook.handover;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.jspecify.annotations.Nullable;

/** What the journal says of hand-over sheets: that they were issued, and a digest of what they say. */
@ApplicationScoped
class SheetFacts implements FactBook {
    /** @param digest SHA-256, in hexadecimal, of what it says in canonical JSON (RFC 8785) */
    record SheetIssued(UUID sheetId, UUID animalId, UUID fromCollectionId, String digest) implements Fact {}

    record SheetWithdrawn(UUID sheetId, @Words @Nullable String reason) implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(SheetIssued.class, SheetWithdrawn.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        if (forgotten.left() instanceof SheetWithdrawn withdrawn) {
            var sheet = IssuedSheet.of(forgotten.entry().populationId(), withdrawn.sheetId());
            if (forgotten.sharedCollections().contains(sheet.fromCollectionId)) {
                return false;
            }
            sheet.reason = withdrawn.reason();
        }
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof SheetIssued issued) {
            new IssuedSheet(entry, issued).persistAndFlush();
        } else if (fact instanceof SheetWithdrawn withdrawn) {
            var sheet = IssuedSheet.of(entry.populationId(), withdrawn.sheetId());
            sheet.withdrawnAt = entry.recordedAt();
            sheet.reason = withdrawn.reason();
            sheet.revision = entry.seq();
            IssuedSheet.flush();
        }
    }
}
