package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.jspecify.annotations.Nullable;

/** What the journal says of findings. */
@ApplicationScoped
class FindingFacts implements FactBook {
    /** A keeper says that it is as it is, although a rule speaks against it. */
    record FindingLeft(
            UUID findingId,
            String subjectKind,
            UUID subjectId,
            String rule,
            String level,
            @Nullable String field,
            @Words(required = true) @Nullable String value,
            @Words(required = true) String message,
            @Words(required = true) String reason)
            implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(FindingLeft.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        if (forgotten.left() instanceof FindingLeft left) {
            LeftFinding row =
                    LeftFinding.findById(new LeftFinding.Key(forgotten.entry().populationId(), left.findingId()));
            row.value = left.value();
            row.message = left.message();
            row.reason = left.reason();
        }
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof FindingLeft left) {
            new LeftFinding(entry, left).persist();
        }
    }
}
