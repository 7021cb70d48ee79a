package org.demebook.consent;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * A view without what its asker may not see: the one way in which a record of somebody else's reaches an answer.
 *
 * <p>Of a view whose identity is denied there is nothing to show: it is left out before it comes here. Else a component whose
 * field group is denied is absent, a list empty; a type that has a public static method {@code absent()}
 * says itself what stands where nothing is to be seen, so that what is hidden looks like what does not exist.
 */
public final class Projection {
    private static final Map<Class<?>, Shape> SHAPES = new ConcurrentHashMap<>();

    private Projection() {}

    private record Shape(
            Constructor<?> constructor,
            RecordComponent[] components,
            @Nullable Object[] absent) {}

    /** @param may whether the asker may see a field group of what this view is of */
    @SuppressWarnings("unchecked")
    public static <R extends Record> R of(R view, Predicate<FieldGroup> may) {
        var shape = SHAPES.computeIfAbsent(view.getClass(), Projection::shape);
        try {
            var values = new Object[shape.components.length];
            for (int i = 0; i < values.length; i++) {
                var component = shape.components[i];
                var value = component.getAccessor().invoke(view);
                var shows = component.getAnnotation(Shows.class);
                if (shows != null && !may.test(shows.value())) {
                    values[i] = shape.absent[i];
                } else {
                    values[i] = value instanceof Record part && isMarked(part.getClass()) ? of(part, may) : value;
                }
            }
            return (R) shape.constructor.newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Whether any component of it names a field group. */
    static boolean isMarked(Class<?> view) {
        return view.isRecord()
                && Arrays.stream(view.getRecordComponents())
                        .anyMatch(component -> component.isAnnotationPresent(Shows.class));
    }

    private static Shape shape(Class<?> view) {
        var components = view.getRecordComponents();
        try {
            var constructor = view.getDeclaredConstructor(
                    Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new));
            constructor.setAccessible(true);
            var absent = new Object[components.length];
            for (int i = 0; i < components.length; i++) {
                components[i].getAccessor().setAccessible(true);
                absent[i] = absent(components[i]);
            }
            return new Shape(constructor, components, absent);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    private static @Nullable Object absent(RecordComponent component) throws ReflectiveOperationException {
        var type = component.getType();
        if (List.class.equals(type)) {
            return List.of();
        }
        var shows = component.getAnnotation(Shows.class);
        if (type.isPrimitive() && shows != null && shows.value() != FieldGroup.IDENTITY) {
            throw new IllegalStateException(component + " cannot be absent; make it an object");
        }
        for (var method : type.getMethods()) {
            if (method.getName().equals("absent") && method.getParameterCount() == 0) {
                return method.invoke(null);
            }
        }
        return null;
    }
}
