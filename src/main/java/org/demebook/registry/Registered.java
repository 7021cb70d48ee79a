package org.demebook.registry;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.demebook.problem.Finding;

/** An animal that was saved, and what is worth a second look. */
public record Registered(
        AnimalView animal,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Finding> warnings) {}
