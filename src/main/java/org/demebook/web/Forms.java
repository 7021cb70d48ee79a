package org.demebook.web;

import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.deser.DeserializationProblemHandler;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.validation.Validator;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.net.URI;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.demebook.problem.Finding;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.jspecify.annotations.Nullable;

/**
 * Takes what was typed into a form to the door that the API would take it to. What is refused is shown in the same form again, at
 * its fields, with everything that was typed.
 */
@ApplicationScoped
public class Forms {
    private static final int OK = 200;
    private static final int BAD_REQUEST = 400;
    private static final int FORBIDDEN = 403;
    private static final int NOT_FOUND = 404;
    private static final Pattern LEFT = Pattern.compile("leave\\[\\d+]\\.rule");

    @Inject
    ObjectMapper json;

    @Inject
    Validator validator;

    @Inject
    Once once;

    @Inject
    Pages pages;

    /**
     * One effect of a form, however often it is sent. Its address ends in {@code ?once=} and a fresh key ({@code visit.once}).
     *
     * @param work does it, and says where what came of it is
     * @param again the form as it is shown again when the work is refused
     */
    public Response once(UUID actorId, Typed typed, Supplier<String> work, Function<Typed, TemplateInstance> again) {
        return attempt(
                typed, () -> once.answer(actorId, typed.all(), () -> Answer.seeOther(URI.create(work.get()))), again);
    }

    /** What may be sent as often as one likes, such as a choice that is the same the second time. */
    public Response attempt(Typed typed, Supplier<Response> work, Function<Typed, TemplateInstance> again) {
        try {
            return work.get();
        } catch (Refusal refusal) {
            return pages.show(Pages.UNPROCESSABLE, again.apply(typed.refused(refusal.problem())));
        }
    }

    /**
     * A page that is asked for, and that may have nothing to show: then it is there all the same and says why. Where what was typed is at
     * fault it says that; what is not there, or not for who asks, is refused as everywhere.
     */
    public Response look(Typed typed, Supplier<TemplateInstance> page, Function<Typed, TemplateInstance> nothing) {
        try {
            return pages.show(page.get());
        } catch (Refusal refusal) {
            var problem = refusal.problem();
            if (problem.status() == NOT_FOUND || problem.status() == FORBIDDEN) {
                throw refusal;
            }
            boolean isTyped =
                    problem.status() == BAD_REQUEST || !problem.findings().isEmpty();
            return pages.show(isTyped ? Pages.UNPROCESSABLE : OK, nothing.apply(typed.refused(problem)));
        }
    }

    /**
     * What was typed as the body that the API takes: {@code a.b} and {@code a[0].b} become objects and lists, and an empty field
     * becomes none. Refuses with INVALID_VALUES, with a finding for each field that cannot be read or breaks a constraint.
     *
     * @param except fields of the form that are no part of the body
     */
    public <T> T read(Typed typed, Class<T> type, String... except) {
        var unreadable = new ArrayList<Finding>();
        var tree = tree(typed, List.of(except));
        T body;
        try {
            // a reader of its own, and not a copy of the mapper, which would find out anew how every record is read
            body = json.readerFor(type).withHandler(new Unreadable(unreadable)).readValue(tree);
        } catch (JsonMappingException failed) {
            unreadable.add(Finding.error(path(failed.getPath()), null, sentence(failed)));
            body = null;
        } catch (IOException failed) {
            throw new IllegalStateException(failed); // a tree has no syntax
        }
        if (body != null) {
            check(body, unreadable);
        }
        if (!unreadable.isEmpty() || body == null) {
            throw new Refusal(ProblemType.INVALID_VALUES, words().lookAtFields(), unreadable);
        }
        return body;
    }

    private <T> void check(T body, List<Finding> findings) {
        for (var violation : validator.validate(body)) {
            var field = violation.getPropertyPath().toString();
            // what could not be read is missing because of that
            if (findings.stream().noneMatch(found -> field.equals(found.field()))) {
                var message = violation.getConstraintDescriptor().getAnnotation() instanceof NotNull
                        ? words().missing()
                        : violation.getMessage();
                findings.add(Finding.error(field, violation.getInvalidValue(), message));
            }
        }
    }

    private FrameMessages words() {
        return pages.words(FrameMessages.class);
    }

    private String sentence(JsonMappingException failed) {
        Throwable root = failed;
        while (root.getCause() != null) {
            root = root.getCause();
        }
        // values of the house explain themselves
        return root instanceof IllegalArgumentException && !(root instanceof NumberFormatException)
                ? String.valueOf(root.getMessage())
                : words().notReadable();
    }

    private static String path(List<JsonMappingException.Reference> steps) {
        var path = new StringBuilder();
        for (var step : steps) {
            if (step.getFieldName() == null) {
                path.append('[').append(step.getIndex()).append(']');
            } else {
                path.append(path.isEmpty() ? "" : ".").append(step.getFieldName());
            }
        }
        return path.toString();
    }

    private ObjectNode tree(Typed typed, List<String> except) {
        var root = json.createObjectNode();
        for (var name : typed.fields()) {
            if (!except.contains(name) && typed.text(name) != null && !isLeftUnsaid(name, typed)) {
                put(root, name, typed);
            }
        }
        if (root.get("leave") instanceof ArrayNode leaves) {
            leaves.removeIf(JsonNode::isEmpty);
        }
        return root;
    }

    /** A finding that was offered to be left as it is, and for which no reason was given. */
    private static boolean isLeftUnsaid(String name, Typed typed) {
        return LEFT.matcher(name).matches() && typed.text(name.replace(".rule", ".reason")) == null;
    }

    /** Puts one field in its place: {@code young[2].sex} into the object that is third in the list {@code young}. */
    private static void put(ObjectNode root, String name, Typed typed) {
        var node = root;
        var steps = name.split("\\.");
        for (int i = 0; i < steps.length - 1; i++) {
            node = child(node, steps[i]);
        }
        var last = steps[steps.length - 1];
        if (last.endsWith("[]")) {
            var list = node.putArray(last.substring(0, last.length() - 2));
            typed.values(name).stream().filter(value -> !value.isBlank()).forEach(list::add);
        } else {
            node.put(last, typed.text(name));
        }
    }

    private static ObjectNode child(ObjectNode parent, String step) {
        int bracket = step.indexOf('[');
        if (bracket < 0) {
            return parent.get(step) instanceof ObjectNode there ? there : parent.putObject(step);
        }
        var name = step.substring(0, bracket);
        var list = parent.get(name) instanceof ArrayNode there ? there : parent.putArray(name);
        int index = index(step.substring(bracket + 1, step.length() - 1));
        while (list.size() <= index) {
            list.addObject();
        }
        return (ObjectNode) list.get(index);
    }

    private static int index(String typed) {
        // more would only be sent by somebody who wants the server to make a long list
        if (!typed.matches("\\d{1,3}")) {
            throw new Refusal(ProblemType.BAD_PARAMETER, "A form of this server has no such field.");
        }
        return Integer.parseInt(typed);
    }

    /** Notes every value that cannot be read, and reads on, so that all of them are told at once. */
    private final class Unreadable extends DeserializationProblemHandler {
        private final List<Finding> findings;

        Unreadable(List<Finding> findings) {
            this.findings = findings;
        }

        @Override
        public @Nullable Object handleWeirdStringValue(
                DeserializationContext context, Class<?> target, String value, String failure) {
            var message = target == LocalDate.class
                    ? words().notADay()
                    : Number.class.isAssignableFrom(target) || target.isPrimitive()
                            ? words().notANumber()
                            : words().notReadable();
            findings.add(Finding.error(path(steps(context)), value, message));
            return target.isPrimitive() ? 0 : null;
        }

        private List<JsonMappingException.Reference> steps(DeserializationContext context) {
            var steps = new ArrayList<JsonMappingException.Reference>();
            for (var at = context.getParser().getParsingContext(); at != null && !at.inRoot(); at = at.getParent()) {
                if (at.inArray()) {
                    steps.add(0, new JsonMappingException.Reference(null, at.getCurrentIndex()));
                } else {
                    steps.add(0, new JsonMappingException.Reference(null, at.getCurrentName()));
                }
            }
            return steps;
        }
    }
}
