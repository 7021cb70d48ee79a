package org.demebook.litter;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.demebook.problem.Finding;
import org.demebook.registry.AnimalView;

/**
 * A litter that was saved.
 *
 * @param young the animals that came into the register with it
 * @param warnings what is worth a second look
 */
public record RegisteredLitter(
        LitterView litter,
        List<AnimalView> young,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Finding> warnings) {}
