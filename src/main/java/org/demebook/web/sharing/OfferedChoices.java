package org.demebook.web.sharing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Named;
import java.util.List;
import org.demebook.consent.ReadyChoice;

/** The ready choices, from what shares least to what shares most: {@code inject:readyChoices}. */
@Named("readyChoices")
@ApplicationScoped
public class OfferedChoices {
    public List<ReadyChoice> getAll() {
        return List.of(ReadyChoice.values());
    }
}
