package org.demebook.federation;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.validation.Validator;
import java.util.Optional;
import org.demebook.protocol.Charter;
import org.demebook.registry.NewPopulation;
import org.demebook.registry.PopulationView;
import org.demebook.taxon.BirthMode;
import org.demebook.taxon.TaxonProfile;

/** How a population of the register is described in its charter: {@code {"birthMode","locality","name","profile","taxon"}}, all text. */
@ApplicationScoped
class CharterForm {
    @Inject
    ObjectMapper json;

    @Inject
    Validator validator;

    /** The profile is the JSON text of its figures: some are fractions, which entries have none of. */
    ObjectNode describe(PopulationView population) {
        try {
            return JsonNodeFactory.instance
                    .objectNode()
                    .put("birthMode", json.convertValue(population.birthMode(), String.class))
                    .put("locality", population.locality())
                    .put("name", population.name())
                    .put("profile", json.writeValueAsString(population.profile()))
                    .put("taxon", population.taxon());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The population that it describes; empty where that is not one that could be founded here. */
    Optional<NewPopulation> population(Charter charter) {
        try {
            var described = charter.description();
            var population = new NewPopulation(
                    charter.code(),
                    described.path("name").asText(),
                    described.path("taxon").asText(),
                    described.path("locality").asText(),
                    json.convertValue(described.path("birthMode").asText(), BirthMode.class),
                    json.readValue(described.path("profile").asText(), TaxonProfile.class));
            return validator.validate(population).isEmpty() ? Optional.of(population) : Optional.empty();
        } catch (JsonProcessingException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
