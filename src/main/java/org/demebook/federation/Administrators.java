package org.demebook.federation;

import static org.demebook.problem.ProblemType.NOT_ALLOWED;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import org.demebook.keeper.Asker;
import org.demebook.keeper.SignedIn;
import org.demebook.problem.Refusal;

/** Who deals with other nodes. */
@ApplicationScoped
class Administrators {
    @Inject
    SignedIn signedIn;

    /** The asker, who is one. Refuses with NOT_ALLOWED before it is known whether there is anything at the address. */
    Asker require() {
        var by = signedIn.asker();
        if (!by.administrator()) {
            throw new Refusal(NOT_ALLOWED, "Only an administrator of this node deals with other nodes.");
        }
        return by;
    }
}
