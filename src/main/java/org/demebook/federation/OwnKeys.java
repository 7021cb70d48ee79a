package org.demebook.federation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.util.List;
import org.demebook.peering.KeysChanged;
import org.demebook.protocol.Refused;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement;
import org.jboss.logging.Logger;

/**
 * Says in every journal that this node signs with another key. Where that does not come about, the next statement is preceded by it:
 * the protocol sees to that.
 */
@ApplicationScoped
class OwnKeys {
    private static final Logger LOG = Logger.getLogger(OwnKeys.class);

    @Inject
    Federations federations;

    void changed(@Observes KeysChanged changed) {
        var said = List.of(Saying.toAll(new Statement.KeysChanged(changed.keys())));
        for (var population : federations.shared()) {
            try {
                federations.with(population, part -> part.write(said));
            } catch (Refused refused) {
                LOG.infof("the new key is told in %s with the next statement: %s", population, refused.getMessage());
            }
        }
    }
}
