package org.demebook.programme;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.demebook.programme.PlanDocument.Litter;

/**
 * What keepers' answers to the plans of a season mean for the next one.
 *
 * @param proposed every litter that was proposed, by its pair; it keeps its id, and so its answers
 * @param agreed litters that stay: both sides accepted
 * @param off pairs that are not proposed again
 * @param out animals that do not breed in this season
 */
record Settled(Map<Couple, UUID> proposed, List<Litter> agreed, List<Litter> off, Set<UUID> out) {
    record Couple(UUID damId, UUID sireId) {
        static Couple of(Litter litter) {
            return new Couple(litter.damId(), litter.sireId());
        }
    }

    static final Settled NOTHING = new Settled(Map.of(), List.of(), List.of(), Set.of());

    /** @param chain plans each of which follows the next */
    static Settled of(List<PlanDocument> chain, Map<UUID, List<LitterAnswer>> answers) {
        Map<Couple, UUID> proposed = new HashMap<>();
        var agreed = new ArrayList<Litter>();
        var off = new ArrayList<Litter>();
        var out = new HashSet<UUID>();
        for (var plan : chain) {
            for (var litter : plan.litters()) {
                if (proposed.put(Couple.of(litter), litter.id()) != null) {
                    continue;
                }
                var said = answers.getOrDefault(litter.id(), List.of());
                switch (LitterState.of(said)) {
                    case AGREED -> agreed.add(litter);
                    case NOT_THIS_YEAR -> off.add(litter);
                    case OPEN -> {}
                }
                for (var answer : said) {
                    if (answer.answer == Answer.CANNOT || answer.answer == Answer.LATER) {
                        out.add(answer.side.equals(Side.DAM.word()) ? litter.damId() : litter.sireId());
                    }
                }
            }
        }
        return new Settled(Map.copyOf(proposed), List.copyOf(agreed), List.copyOf(off), Set.copyOf(out));
    }
}
