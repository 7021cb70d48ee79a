package org.demebook.census;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import org.demebook.census.CensusFacts.CountProtectionWaived;
import org.demebook.census.CensusFacts.CountRulesSet;
import org.demebook.census.CensusFacts.CountWaiverWithdrawn;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.rest.Revision;
import org.jspecify.annotations.Nullable;

/** How published counts are protected: the association's parameters, and keepers who do without. */
@ApplicationScoped
public class Protection {
    @Inject
    Journal journal;

    /** The parameters, for a coordinator: who knows them can undo some of the protection. */
    @Transactional
    public CountRulesView rules(Standing by) {
        Keepers.requireCoordinator(by);
        return CountRules.of(by.populationId());
    }

    /** Sets the parameters from the next release on. */
    @Transactional
    public CountRulesView set(Standing by, @Nullable String ifMatch, NewCountRules rules) {
        Keepers.requireCoordinator(by);
        journal.open(by.populationId());
        var present = CountRules.of(by.populationId());
        Revision.require(ifMatch, present.revision());
        journal.record(
                by.populationId(),
                by.keeperId(),
                new CountRulesSet(
                        rules.fewestKeepers(), rules.percent(), present.revision() == 0 ? null : present.revision()));
        return CountRules.of(by.populationId());
    }

    @Transactional
    public CountWaiverView waiver(Standing by) {
        return new CountWaiverView(CountWaiver.isOf(by.populationId(), by.keeperId()));
    }

    /** Waives the protection of one's own numbers, or takes that back; the same again changes nothing. */
    @Transactional
    public CountWaiverView waive(Standing by, boolean waived) {
        journal.open(by.populationId());
        if (waived != CountWaiver.isOf(by.populationId(), by.keeperId())) {
            journal.record(
                    by.populationId(),
                    by.keeperId(),
                    waived ? new CountProtectionWaived(by.keeperId()) : new CountWaiverWithdrawn(by.keeperId()));
        }
        return new CountWaiverView(waived);
    }
}
