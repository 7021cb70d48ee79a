package org.demebook.federation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Optional;
import java.util.UUID;
import org.demebook.peering.Node;
import org.demebook.protocol.Refused;

/** Begins this node's journal in a population that it joined: only after the founder told how far that went, should there have been one. */
@ApplicationScoped
class Opening {
    @Inject
    Federations federations;

    @Inject
    Node node;

    /** Does nothing where it has begun, and as long as the node is fenced. */
    void open(UUID population) {
        boolean due = federations.reading(
                population,
                part -> !part.fenced()
                        && !part.heads().containsKey(node.identity().nodeId()));
        if (due) {
            try {
                federations.with(population, part -> {
                    part.open(node.name(), Optional.empty());
                    return true;
                });
            } catch (Refused refused) {
                // fenced again meanwhile: the next look comes in a second
            }
        }
    }
}
