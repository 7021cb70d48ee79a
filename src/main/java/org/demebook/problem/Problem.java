package org.demebook.problem;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * The body of every error answer: problem details of RFC 9457, with the findings as an extension member.
 *
 * @param type address of the kind of problem; it can be opened and says what to do
 * @param findings each thing that was found wrong; absent when the detail says it all
 */
public record Problem(
        String type,
        String title,
        int status,
        String detail,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Finding> findings) {}
