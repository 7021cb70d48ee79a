package org.demebook.rest;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.jboss.jandex.ClassInfo;
import org.jboss.jandex.DotName;
import org.jboss.jandex.IndexView;
import org.jspecify.annotations.Nullable;

/**
 * Completes the schemas of the contract from the records that they describe: what is not {@code @Nullable} is always there,
 * and what is sent may have no unknown field.
 */
final class ContractSchemas {
    private static final DotName NULLABLE = DotName.createSimple(Nullable.class.getName());
    private static final DotName ROUGH_DATE = DotName.createSimple("org.demebook.notation.RoughDate");

    /** Records of these rooms, and of those within them, are drawn on pages and never sent as JSON. */
    private static final List<String> DRAWN = List.of("org.demebook.plot", "org.demebook.chart", "org.demebook.web");

    private final IndexView index;
    private final Map<String, Schema> schemas;

    ContractSchemas(IndexView index, Map<String, Schema> schemas) {
        this.index = index;
        this.schemas = schemas;
    }

    void complete(OpenAPI contract) {
        contract.getComponents().removeSchema("Precision"); // of RoughDate, which is a string on the wire
        for (var type : index.getKnownClasses()) {
            var schema = mayBeOnTheWire(type.name().packagePrefix()) ? schemas.get(type.simpleName()) : null;
            if (schema != null && type.name().equals(ROUGH_DATE)) {
                describeRoughDate(schema);
            } else if (schema != null && type.isRecord()) {
                requireWhatIsAlwaysThere(type, schema);
            }
        }
        for (var item : contract.getPaths().getPathItems().values()) {
            for (var operation : item.getOperations().values()) {
                if (operation.getRequestBody() != null) {
                    operation.getRequestBody().getContent().getMediaTypes().values().stream()
                            .map(form -> form.getSchema())
                            .forEach(schema -> close(schema, new HashSet<>()));
                }
            }
        }
    }

    /** Schemas are found by simple name, which a record drawn on a page may share with one that is sent. */
    private static boolean mayBeOnTheWire(@Nullable String room) {
        return room != null
                && room.startsWith("org.demebook.")
                && DRAWN.stream().noneMatch(room::startsWith);
    }

    private void requireWhatIsAlwaysThere(ClassInfo type, Schema schema) {
        if (schema.getProperties() == null) {
            return;
        }
        List<String> required = new ArrayList<>();
        for (var component : type.recordComponentsInDeclarationOrder()) {
            var name = component.name();
            var mayBeAbsent = component.type().hasAnnotation(NULLABLE)
                    || component.annotations().stream()
                            .anyMatch(annotation ->
                                    annotation.name().withoutPackagePrefix().equals("JsonInclude"));
            if (!mayBeAbsent && schema.getProperties().containsKey(name)) {
                required.add(name);
            }
        }
        schema.setRequired(required.isEmpty() ? null : required);
    }

    /** An object that is sent has no fields but these. */
    private void close(@Nullable Schema schema, Set<String> seen) {
        if (schema == null) {
            return;
        }
        if (schema.getRef() != null) {
            var name = schema.getRef().substring(schema.getRef().lastIndexOf('/') + 1);
            if (seen.add(name)) {
                close(schemas.get(name), seen);
            }
            return;
        }
        if (schema.getProperties() != null) {
            schema.setAdditionalPropertiesSchema(OASFactory.createSchema().booleanSchema(false));
            schema.getProperties().values().forEach(property -> close(property, seen));
        }
        close(schema.getItems(), seen);
    }

    private static void describeRoughDate(Schema schema) {
        schema.setProperties(null);
        schema.setRequired(null);
        schema.setType(List.of(Schema.SchemaType.STRING));
        schema.setDescription(
                "A date as precisely as it is known, in the Extended Date/Time Format of ISO 8601-2: a day"
                        + " 2026-06-29, a month 2026-06, a year 2026, on or before ../2026-06-29, on or after 2026-06-29/..");
        schema.setMaxLength(40);
        schema.setExamples(List.of("2026-06-29", "2026-06", "../2026-06-29"));
    }
}
