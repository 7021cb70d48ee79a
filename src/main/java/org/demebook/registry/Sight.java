package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.Map;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;

/**
 * Who sees a record about an animal, as conditions for the queries of any room: the collections that wrote it down, and
 * whoever holds the animal now. To everybody else there is no such record.
 */
@ApplicationScoped
public class Sight {
    @Inject
    Keepers keepers;

    /** Of records with a {@code collectionId}, about the animal that this attribute names. */
    public static String writtenOrHeld(String animalId) {
        return "(collectionId in :own or " + held(animalId) + ")";
    }

    /** That the animal which this attribute names lives in a collection of the asker's. */
    public static String held(String animalId) {
        return animalId
                + " in (select a.id from Animal a where a.populationId = :population and a.collectionId in :own)";
    }

    /** What the conditions want, {@code population} and {@code own}; more may be put in. */
    public Map<String, Object> parameters(Standing by) {
        var parameters = new HashMap<String, Object>();
        parameters.put("population", by.populationId());
        parameters.put("own", keepers.collectionIds(by));
        return parameters;
    }
}
