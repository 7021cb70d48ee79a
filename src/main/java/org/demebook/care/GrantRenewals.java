package org.demebook.care;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import org.demebook.consent.GrantView;
import org.demebook.consent.Grants;
import org.demebook.keeper.Standing;

/** Reminds of what is shared with others and ends soon. What came with one ready choice is renewed by one, and is one task. */
@ApplicationScoped
class GrantRenewals implements CareTaskSource {
    private static final int DAYS_AHEAD = 30;

    @Inject
    Grants grants;

    @Override
    public List<CareTask> tasks(Standing by, LocalDate today) {
        var tasks = new LinkedHashMap<String, CareTask>();
        for (var grant : grants.endingWithin(by, DAYS_AHEAD)) {
            var task = task(grant);
            // of those that came together the one that ends first
            tasks.merge(task.key(), task, (one, other) -> other.dueOn().isBefore(one.dueOn()) ? other : one);
        }
        return new ArrayList<>(tasks.values());
    }

    private static CareTask task(GrantView grant) {
        var endsOn = LocalDate.ofInstant(grant.until(), ZoneOffset.UTC);
        var choice = grant.choice();
        return new CareTask(
                choice == null
                        ? "%s:%s".formatted(CareKind.GRANT_RENEWAL.word(), grant.id())
                        : "%s:%s:%s:%s"
                                .formatted(CareKind.GRANT_RENEWAL.word(), grant.collection(), choice.word(), endsOn),
                CareKind.GRANT_RENEWAL,
                null,
                null,
                endsOn,
                endsOn.minusDays(DAYS_AHEAD),
                endsOn,
                choice == null ? "Renew a grant, or let it end" : "Choose again what you share, or let it end",
                choice == null
                        ? "A grant that was given on %s ends on %s; nothing is shared on it after that."
                                .formatted(LocalDate.ofInstant(grant.givenAt(), ZoneOffset.UTC), endsOn)
                        : "The choice \"%s\" ends on %s; nothing is shared by it after that."
                                .formatted(choice.word(), endsOn));
    }
}
