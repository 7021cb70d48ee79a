package org.demebook.web.animal;

import org.demebook.registry.AnimalView;
import org.demebook.registry.IdentifierView;

/**
 * An animal in a list.
 *
 * @param name what the one who looks calls it; empty where it has no such name
 */
public record Listed(AnimalView animal, String name) {
    static Listed of(AnimalView animal) {
        return new Listed(animal, name(animal));
    }

    static String name(AnimalView animal) {
        return animal.held() == null
                ? ""
                : animal.held().identifiers().stream()
                        .filter(identifier -> identifier.kind().equals("own-reference"))
                        .map(IdentifierView::value)
                        .findFirst()
                        .orElse("");
    }
}
