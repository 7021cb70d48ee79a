package org.demebook.programme;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.keeper.Standing;
import org.demebook.wall.WholeRegister;

/** Reads what no asker reads by themselves, each in a transaction of its own. */
@ApplicationScoped
class KeptPlans {
    @Transactional
    @WholeRegister
    public Optional<IssuedPlan> find(Standing by, UUID id) {
        return IssuedPlan.of(by.populationId(), id);
    }

    @Transactional
    @WholeRegister
    public Optional<IssuedPlan> inForce(Standing by) {
        return IssuedPlan.inForce(by.populationId());
    }

    @Transactional
    @WholeRegister
    public List<IssuedPlan> page(Standing by, long before, int most) {
        return IssuedPlan.page(by.populationId(), before, most);
    }

    @Transactional
    @WholeRegister
    public Optional<PlanInput.Input> input(Standing by, String digest) {
        return PlanInput.of(by.populationId(), digest);
    }

    @Transactional
    @WholeRegister
    public Map<UUID, List<LitterAnswer>> answers(Standing by, PlanDocument plan) {
        return answers(by, List.of(plan));
    }

    @Transactional
    @WholeRegister
    public Map<UUID, List<LitterAnswer>> answers(Standing by, List<PlanDocument> plans) {
        Set<UUID> litters = plans.stream()
                .flatMap(plan -> plan.litters().stream())
                .map(PlanDocument.Litter::id)
                .collect(Collectors.toSet());
        return LitterAnswer.byLitter(by.populationId(), litters);
    }

    void keepInput(Standing by, PlanInput.Input input) {
        PlanInput.keep(by.populationId(), input);
    }
}
