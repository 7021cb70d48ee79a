package org.demebook.rest;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.demebook.problem.ProblemType;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.jboss.jandex.DotName;
import org.jboss.jandex.IndexView;
import org.jboss.jandex.MethodInfo;

/**
 * Completes the contract with what the annotations of the framework do not say: which problem types each operation
 * answers with ({@link Refuses}), the Idempotency-Key of every POST, the security scheme.
 */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD)
public class ContractFilter implements OASFilter {
    private static final DotName OPERATION =
            DotName.createSimple("org.eclipse.microprofile.openapi.annotations.Operation");
    private static final DotName PERMIT_ALL = DotName.createSimple("jakarta.annotation.security.PermitAll");

    private final IndexView index;

    public ContractFilter(IndexView index) {
        this.index = index;
    }

    @Override
    public void filterOpenAPI(OpenAPI contract) {
        Map<String, MethodInfo> methods = index.getAnnotations(OPERATION).stream()
                .filter(annotation -> annotation.value("operationId") != null)
                .collect(Collectors.toMap(
                        annotation -> annotation.value("operationId").asString(),
                        annotation -> annotation.target().asMethod(),
                        (first, second) -> first));
        var schemas = contract.getComponents().getSchemas();
        new ContractSchemas(index, schemas).complete(contract);
        contract.getPaths().getPathItems().forEach((path, item) -> item.getOperations()
                .forEach(
                        (verb, operation) -> complete(path, verb, operation, methods.get(operation.getOperationId()))));
    }

    private static void complete(String path, PathItem.HttpMethod verb, Operation operation, MethodInfo method) {
        if (method == null) {
            throw new IllegalStateException(verb + " " + path + " has no operationId");
        }
        var anonymous = method.hasAnnotation(PERMIT_ALL);
        if (anonymous) {
            operation.setSecurity(new ArrayList<>());
        }
        var takesKey = verb == PathItem.HttpMethod.POST
                && !operation.getOperationId().equals("signIn")
                && !operation.getOperationId().startsWith("check")
                && !operation.getOperationId().startsWith("print");
        if (takesKey) {
            operation.addParameter(OASFactory.createParameter()
                    .name("Idempotency-Key")
                    .in(Parameter.In.HEADER)
                    .required(true)
                    .description("A fresh value for each new thing; the same one when the request is repeated.")
                    .schema(OASFactory.createSchema()
                            .addType(SchemaType.STRING)
                            .minLength(1)
                            .maxLength(100)));
        }
        if (operation.getDescription() == null) {
            operation.setDescription(forWhom(path, anonymous, takesKey));
        }
        for (var entry :
                byStatus(problems(operation, method, anonymous, takesKey)).entrySet()) {
            operation.getResponses().addAPIResponse(entry.getKey().toString(), response(entry.getValue()));
        }
    }

    private static String forWhom(String path, boolean anonymous, boolean takesKey) {
        var audience = anonymous
                ? "Needs no sign-in; a token that is sent along has to be good."
                : path.contains("{population}")
                        ? "For members of the population; to everybody else it does not exist."
                        : "For everybody who is signed in.";
        return takesKey
                ? audience + " Sent again with the same Idempotency-Key, it has one effect and one answer."
                : audience;
    }

    private static Set<ProblemType> problems(
            Operation operation, MethodInfo method, boolean anonymous, boolean takesKey) {
        var types = EnumSet.of(ProblemType.UNEXPECTED, ProblemType.NOT_ACCEPTABLE);
        var refuses = method.annotation(DotName.createSimple(Refuses.class.getName()));
        if (refuses == null) {
            throw new IllegalStateException(method + " does not say what it refuses (@Refuses)");
        }
        if (refuses.value() != null) {
            for (var type : refuses.value().asEnumArray()) {
                types.add(ProblemType.valueOf(type));
            }
        }
        // a token that is sent is checked, also where none has to be (RFC 6750, 3.1); a Keycloak that is asked for it
        // may be away
        types.addAll(List.of(ProblemType.NOT_SIGNED_IN, ProblemType.UNAVAILABLE));
        if (!anonymous) {
            // where a Keycloak keeps the accounts: one without the role of a keeper
            types.add(ProblemType.NOT_ALLOWED);
        }
        if (operation.getRequestBody() != null) {
            types.addAll(List.of(
                    ProblemType.UNREADABLE_BODY,
                    ProblemType.UNKNOWN_FIELD,
                    ProblemType.INVALID_VALUES,
                    ProblemType.TOO_LARGE,
                    ProblemType.UNSUPPORTED_MEDIA_TYPE,
                    ProblemType.CONFLICT));
        }
        if (takesKey) {
            types.addAll(List.of(
                    ProblemType.IDEMPOTENCY_KEY_MISSING, ProblemType.IDEMPOTENCY_KEY_REUSED, ProblemType.SHOWN_ONCE));
        }
        var hasParameters = operation.getParameters() != null
                && operation.getParameters().stream()
                        .anyMatch(p -> p.getIn() == Parameter.In.QUERY || "If-Match".equals(p.getName()));
        if (hasParameters) {
            types.add(ProblemType.BAD_PARAMETER);
        }
        return types;
    }

    private static Map<Integer, List<ProblemType>> byStatus(Set<ProblemType> types) {
        return types.stream().collect(Collectors.groupingBy(ProblemType::status, TreeMap::new, Collectors.toList()));
    }

    private static APIResponse response(List<ProblemType> types) {
        var description = types.stream()
                .map(type -> type.title() + " (" + type.kebab() + ")")
                .collect(Collectors.joining("; "));
        var response = OASFactory.createAPIResponse()
                .description(description)
                .content(OASFactory.createContent()
                        .addMediaType(
                                Problems.MEDIA_TYPE,
                                OASFactory.createMediaType()
                                        .schema(OASFactory.createSchema().ref("#/components/schemas/Problem"))));
        response.addExtension(
                "x-problem-types", types.stream().map(ProblemType::uri).toList());
        return response;
    }
}
