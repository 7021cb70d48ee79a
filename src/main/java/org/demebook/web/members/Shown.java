package org.demebook.web.members;

import org.demebook.web.Typed;

/**
 * A page with several forms: one of them is shown again with what was typed, the others as they are opened.
 *
 * @param form which one; empty when none is
 */
public record Shown(String form, Typed typed) {
    public boolean is(String name) {
        return form.equals(name);
    }

    public Typed of(String name) {
        return is(name) ? typed : Typed.nothing();
    }
}
