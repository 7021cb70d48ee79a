package org.demebook.protocol;

import java.util.Collection;

/** Who acts on what takes effect; called within the change that brought it. */
public interface Follower {
    /** An entry, own or foreign, that takes effect. */
    void follow(Entry entry);

    /** Bytes of these entries are erased here; what followed from them alone has to go. */
    void forget(String node, Collection<Long> seqs);

    void raised(Alarm alarm);

    Follower NOBODY = new Follower() {
        @Override
        public void follow(Entry entry) {}

        @Override
        public void forget(String node, Collection<Long> seqs) {}

        @Override
        public void raised(Alarm alarm) {}
    };
}
