package org.demebook.keeper;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;

/** Name and password of an account on this node. */
public record SignIn(
        @NotNull @Size(max = 40) String name,
        @NotNull @Size(max = 200) String password) {
    @Override
    public String toString() {
        return "SignIn[name=" + name + "]"; // no password in a log
    }
}
