package org.demebook.start;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.spi.Bean;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.ws.rs.Path;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.demebook.consent.Shows;
import org.demebook.problem.Problem;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;

/**
 * Refuses to start while an answer of this server has a part of which nobody said to whom it is shown: every component of a
 * view names its field group ({@link Shows}), or the whole view says whom it is for ({@link ShownTo}).
 */
@ApplicationScoped
class MarkedViews {
    void check(@Observes @Priority(1) StartupEvent started, BeanManager beans) {
        var unmarked = new TreeSet<String>();
        beans.getBeans(Object.class, Any.Literal.INSTANCE).stream()
                .map(Bean::getBeanClass)
                .filter(resource -> resource.isAnnotationPresent(Path.class))
                .flatMap(resource -> Arrays.stream(resource.getMethods()))
                .flatMap(MarkedViews::views)
                .forEach(view -> unmarked.addAll(unmarked(view)));
        if (!unmarked.isEmpty()) {
            throw new IllegalStateException("Nobody said to whom is shown: " + String.join(", ", unmarked));
        }
    }

    /** What a method of a resource answers, by its type and by the contract. */
    private static Stream<Class<?>> views(Method method) {
        return Stream.concat(
                        Arrays.stream(method.getAnnotationsByType(APIResponse.class))
                                .flatMap(answer -> Arrays.stream(answer.content()))
                                .map(Content::schema)
                                .map(schema -> (Type) schema.implementation()),
                        Stream.of(method.getGenericReturnType()))
                .flatMap(MarkedViews::classes);
    }

    private static Stream<Class<?>> classes(Type type) {
        if (type instanceof ParameterizedType generic) {
            return Arrays.stream(generic.getActualTypeArguments()).flatMap(MarkedViews::classes);
        }
        return type instanceof Class<?> plain && plain.isRecord() && plain != Problem.class
                ? Stream.of(plain)
                : Stream.empty();
    }

    /** The components of a view that are not marked, nor all of whose own are. */
    static Set<String> unmarked(Class<?> view) {
        var found = new LinkedHashSet<String>();
        if (view.isAnnotationPresent(ShownTo.class)) {
            return found;
        }
        for (var component : view.getRecordComponents()) {
            if (!component.isAnnotationPresent(Shows.class)) {
                found.addAll(unmarked(view, component));
            }
        }
        return found;
    }

    private static Set<String> unmarked(Class<?> view, RecordComponent component) {
        var parts = classes(component.getGenericType()).toList();
        if (parts.isEmpty()) {
            return Set.of(view.getSimpleName() + "." + component.getName());
        }
        var found = new LinkedHashSet<String>();
        parts.forEach(part -> found.addAll(unmarked(part)));
        return found;
    }
}
