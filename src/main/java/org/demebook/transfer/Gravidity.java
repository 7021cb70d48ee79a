package org.demebook.transfer;

import static org.demebook.problem.ProblemType.GRAVID_FEMALE;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.util.Optional;
import org.demebook.keeper.Standing;
import org.demebook.problem.Rule;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;

/** Whether an animal that is to travel is gravid. */
@ApplicationScoped
public class Gravidity {
    @Inject
    @Any
    Instance<GravidFemales> rooms;

    public Optional<Breach> check(Standing by, Custody animal) {
        if (rooms.stream().noneMatch(room -> room.isGravid(by.populationId(), animal.id()))) {
            return Optional.empty();
        }
        return Optional.of(Breach.block(
                GRAVID_FEMALE,
                Rule.GRAVID_TRANSFER,
                "animal",
                animal.number(),
                "%s is recorded as gravid, and the advice to carriers under CITES is not to transport pregnant animals. Wait until she has given birth; if she has to go now, confirm it: leave it, with the reason."
                        .formatted(animal.number()),
                null));
    }
}
