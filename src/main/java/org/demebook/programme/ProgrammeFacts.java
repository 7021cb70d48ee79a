package org.demebook.programme;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.jspecify.annotations.Nullable;

/** What the journal says of plans, each as it was issued, which nothing changes; and what keepers answered. */
@ApplicationScoped
class ProgrammeFacts implements FactBook {
    record SeasonPlanIssued(PlanDocument plan) implements Fact {
        @Override
        public String validFrom() {
            return plan.pairOn().toString();
        }
    }

    /**
     * Takes the place of what the same side answered before.
     *
     * @param grantIds grants of each side to the other, where this answer made them agree; null for none
     */
    record SeasonLitterAnswered(
            UUID planId,
            UUID litterId,
            Side side,
            Answer answer,
            @Nullable AnswerReason reason,
            @Nullable @Words String note,
            @Nullable List<UUID> grantIds,
            @Nullable Long supersedes)
            implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(SeasonPlanIssued.class, SeasonLitterAnswered.class);
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof SeasonPlanIssued issued) {
            new IssuedPlan(entry, issued.plan()).persist();
        } else if (fact instanceof SeasonLitterAnswered answered) {
            LitterAnswer.say(entry, answered);
        }
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        if (forgotten.left() instanceof SeasonLitterAnswered answered) {
            LitterAnswer.forgetNote(forgotten.entry(), answered);
        }
        return true;
    }
}
