package org.demebook.registry;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.demebook.problem.Finding;
import org.demebook.rest.ShownTo;

/** An animal that was saved, and what is worth a second look. */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record Registered(
        AnimalView animal,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Finding> warnings) {}
