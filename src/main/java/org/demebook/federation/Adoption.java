package org.demebook.federation;

import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NOT_SAID;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.demebook.federation.Views.AdoptionView;
import org.demebook.federation.Views.EndorsementView;
import org.demebook.federation.Views.NewAdoption;
import org.demebook.keeper.Asker;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement;
import org.demebook.protocol.Statement.Endorsement;
import org.demebook.protocol.Transfer;
import org.demebook.protocol.Whereabouts;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;
import org.demebook.signing.Signed;

/** What is done when a node is gone for good: its animals are held by another, on the word of more than half of the nodes that are left. */
@ApplicationScoped
class Adoption {
    private static final int MOST_CHARACTERS = 4_096;

    @Inject
    Federations federations;

    @Inject
    Sharing sharing;

    @Inject
    ObjectMapper json;

    /** This node's word that another is gone; it is set aside here from now on. */
    @Transactional
    EndorsementView endorse(Asker by, UUID population, String gone) {
        sharing.setAside(by, population, gone, true);
        var endorsement = sharing.saying(population, part -> part.endorse(gone));
        return new EndorsementView(
                endorsement.word().compact(),
                json.convertValue(endorsement.keys().toJson(), new TypeReference<Map<String, Object>>() {}));
    }

    /** All animals that the gone node holds as far as is known here, and those on their way to it, are held here from now on. */
    @Transactional
    AdoptionView adopt(Asker by, UUID population, NewAdoption adoption) {
        var given = new TreeMap<String, Endorsement>();
        adoption.endorsements().forEach(one -> {
            var endorsement = read(one);
            given.put(endorsement.keys().nodeId(), endorsement);
        });
        sharing.setAside(by, population, adoption.gone(), true);
        return sharing.saying(population, part -> {
            given.put(federations.nodeId(), part.endorse(adoption.gone()));
            var charter = part.charterEntry()
                    .orElseThrow(() -> new Refusal(NOT_SAID, "The charter of this population is not known here yet."));
            var sayings = new ArrayList<Saying>();
            left(part, adoption.gone())
                    .forEach((animal, stint) -> sayings.add(Saying.toAll(new Statement.Adopted(
                            animal, adoption.gone(), stint, charter, List.copyOf(given.values())))));
            part.write(sayings);
            return new AdoptionView(
                    adoption.gone(),
                    sayings.stream()
                            .map(saying ->
                                    ((Statement.Adopted) saying.says()).animal().toString())
                            .toList());
        });
    }

    /** What the gone node holds or was being sent, each with the transfer by which it came there; none where it was registered there. */
    private static Map<AnimalId, Optional<UUID>> left(Participant part, String gone) {
        var left = new TreeMap<AnimalId, Optional<UUID>>();
        for (var animal : part.animals()) {
            var place = part.whereabouts(animal);
            if (place instanceof Whereabouts.Held held && held.node().equals(gone)) {
                left.put(animal, broughtBy(part, animal, gone));
            } else if (place instanceof Whereabouts.InTransit transit
                    && transit.to().equals(gone)) {
                left.put(animal, Optional.of(transit.transfer()));
            }
        }
        return left;
    }

    private static Optional<UUID> broughtBy(Participant part, AnimalId animal, String gone) {
        return part.transfers().values().stream()
                .filter(transfer -> transfer.animal().equals(animal)
                        && transfer.to().equals(gone)
                        && transfer.state() == Transfer.State.TAKEN)
                .max(Comparator.comparing(Transfer::offeredAt))
                .map(Transfer::id);
    }

    private Endorsement read(Views.GivenEndorsement given) {
        try {
            return new Endorsement(Signed.parse(given.word(), MOST_CHARACTERS), KeyChain.parse(given.keysAsJson(json)));
        } catch (Malformed malformed) {
            var problem = "is no endorsement as a node gives it: " + malformed.getMessage();
            throw new Refusal(
                    INVALID_VALUES,
                    "endorsements " + problem,
                    List.of(Finding.error("endorsements", given.word(), problem)));
        }
    }
}
