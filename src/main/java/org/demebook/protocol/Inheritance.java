package org.demebook.protocol;

import java.util.List;
import org.demebook.protocol.Statement.Adopted;
import org.demebook.protocol.Statement.Carried;
import org.demebook.protocol.Statement.GoneStated;

/**
 * Who may adopt the animals of a node that is gone for good: the one that more than half of the other nodes of the charter named. Each of
 * them names one, so there is at most one. What the gone node is later found to have released beyond the largest of the sizes that they
 * stated is void.
 */
record Inheritance(Carrying carrying) {

    /** How many entries of the gone node's journal hold. */
    long size(Adopted adopted) {
        return size(adopted.words());
    }

    long size(List<Carried> words) {
        return words.stream().mapToLong(word -> stated(word).size()).max().orElse(0);
    }

    private GoneStated stated(Carried word) {
        if (carrying.read(word).says() instanceof GoneStated stated) {
            return stated;
        }
        throw new BadStatement("carries an entry that says of no node that it is gone");
    }

    /** @throws BadStatement if the words are not enough, not theirs, of another node or for another heir */
    void require(Adopted adopted, String by, Charter charter) {
        if (!charter.seats(by) || !charter.seats(adopted.from()) || by.equals(adopted.from())) {
            throw new BadStatement("adopts from or by a node that takes no part");
        }
        var before = "";
        for (var word : adopted.words()) {
            var stated = stated(word);
            var signer = word.keys().nodeId();
            if (signer.compareTo(before) <= 0
                    || !charter.seats(signer)
                    || signer.equals(adopted.from())
                    || !stated.gone().equals(adopted.from())) {
                throw new BadStatement("carries a word that does not hold");
            }
            if (!stated.heir().equals(by)) {
                throw new BadStatement("carries a word for another heir");
            }
            before = signer;
        }
        if (!isEnough(adopted.words().size(), charter)) { // in ascending order: each is another node's
            throw new BadStatement("carries the word of %d nodes where %d are needed"
                    .formatted(adopted.words().size(), needed(charter)));
        }
    }

    static boolean isEnough(int words, Charter charter) {
        return words >= needed(charter);
    }

    /** More than half of all nodes but the gone one. */
    static int needed(Charter charter) {
        return (charter.seats().size() - 1) / 2 + 1;
    }
}
