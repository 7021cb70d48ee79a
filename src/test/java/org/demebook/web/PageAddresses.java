package org.demebook.web;

import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.spi.Bean;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** The address of every page, with its parameters in braces, called as in the contract: a page that is added is among them. */
public final class PageAddresses {
    private PageAddresses() {}

    public static Set<String> all(BeanManager beans) {
        return beans.getBeans(Object.class, Any.Literal.INSTANCE).stream()
                .map(Bean::getBeanClass)
                .filter(page -> page.isAnnotationPresent(Path.class)
                        && page.getPackageName().startsWith(PageAddresses.class.getPackageName()))
                .flatMap(page -> Arrays.stream(page.getMethods())
                        .filter(method -> method.isAnnotationPresent(GET.class))
                        .map(method -> address(page, method)))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static String address(Class<?> page, Method method) {
        var path = method.getAnnotation(Path.class);
        var address = "/" + page.getAnnotation(Path.class).value() + "/" + (path == null ? "" : path.value());
        var plain = address.replaceAll("/+", "/").replaceAll("(?<=.)/$", "");
        return plain.replaceAll("\\{\\s*(\\w+)\\s*:[^}]*}", "{$1}");
    }
}
