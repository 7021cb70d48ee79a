package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.HashSet;
import java.util.UUID;
import org.demebook.protocol.Statement.Adopted;
import org.demebook.protocol.Statement.Endorsement;
import org.demebook.signing.Signed;

/**
 * That a node is gone for good: the word of more than half of the other nodes of the charter. Such a word is
 * {@code {"gone","population","size"}}: the node, and how many entries of its journal the signer holds. What the gone node is later found
 * to have released beyond the largest of these sizes is void.
 */
final class Endorsements {
    static final String TYPE = "demebook-endorsement";

    private Endorsements() {}

    static Endorsement sign(Membership membership, String gone, long size) {
        var payload = JsonNodeFactory.instance
                .objectNode()
                .put("gone", gone)
                .put("population", membership.population().toString())
                .put("size", size);
        return new Endorsement(
                Signed.sign(TYPE, payload, membership.key().get()),
                membership.keys().get());
    }

    /** How many entries of the gone node's journal hold. */
    static long size(Adopted adopted) {
        return adopted.endorsements().stream()
                .mapToLong(endorsement -> size(endorsement, adopted.from()))
                .max()
                .orElse(0);
    }

    private static long size(Endorsement endorsement, String gone) {
        var fields = Fields.of(endorsement.word().payload());
        if (!fields.text("gone").equals(gone)) {
            throw new BadStatement("carries a word on another node");
        }
        long size = fields.number("size", 0, Long.MAX_VALUE);
        fields.text("population");
        fields.end();
        return size;
    }

    /** @throws BadStatement if the words are not enough, not theirs or of something else */
    static void require(Adopted adopted, String by, UUID population, Charter charter) {
        if (!charter.seats(by) || !charter.seats(adopted.from()) || by.equals(adopted.from())) {
            throw new BadStatement("adopts from or by a node that takes no part");
        }
        var signers = new HashSet<String>();
        var before = "";
        for (var endorsement : adopted.endorsements()) {
            var signer = endorsement.keys().nodeId();
            var word = endorsement.word();
            size(endorsement, adopted.from());
            if (!word.type().equals(TYPE)
                    || !word.payload().path("population").asText().equals(population.toString())
                    || signer.compareTo(before) <= 0
                    || !charter.seats(signer)
                    || signer.equals(adopted.from())
                    || !endorsement.keys().key(word.keyId()).map(word::isBy).orElse(false)) {
                throw new BadStatement("carries an endorsement that does not hold");
            }
            signers.add(signer);
            before = signer;
        }
        if (2 * signers.size() <= charter.seats().size() - 1) {
            throw new BadStatement("carries the word of %d nodes where more than half of %d are needed"
                    .formatted(signers.size(), charter.seats().size() - 1));
        }
    }
}
