package org.demebook.handover;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.Optional;
import java.util.UUID;

/** The very bytes of what a sheet says. It may hold a name, so it stands outside the journal, which holds its digest. */
@Entity
@Table(name = "handover_sheet_words")
@IdClass(SheetWords.Key.class)
class SheetWords extends PanacheEntityBase {
    record Key(UUID populationId, UUID sheetId) {}

    @Id
    UUID populationId;

    @Id
    UUID sheetId;

    byte[] words;

    protected SheetWords() {}

    SheetWords(UUID populationId, UUID sheetId, byte[] words) {
        this.populationId = populationId;
        this.sheetId = sheetId;
        this.words = words;
    }

    /** Empty where they are not on this node. */
    static Optional<SheetWords> of(IssuedSheet sheet) {
        return findByIdOptional(new Key(sheet.populationId, sheet.id));
    }

    /** Whether they are, byte for byte, what was issued; the code on the paper says so even of a digest that was changed. */
    boolean areThoseOf(IssuedSheet sheet) {
        return SheetDigest.of(words).equals(sheet.digest)
                && SheetDigest.code(sheet.digest).equals(sheet.code);
    }

    HandoverSheet read() {
        return SheetDigest.read(words);
    }
}
