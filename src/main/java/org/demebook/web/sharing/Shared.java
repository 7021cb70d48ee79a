package org.demebook.web.sharing;

import java.util.List;
import org.demebook.consent.GrantView;
import org.demebook.consent.SharingView;
import org.demebook.consent.SharingView.NodeChoice;
import org.demebook.keeper.CollectionView;

/**
 * What one collection shares.
 *
 * @param now what others may do with it at this moment, by whatever grant
 * @param animals how many the collection holds or owns
 * @param nodes what is chosen for other nodes, each that the population is shared with
 * @param byHand live grants that no ready choice gave
 */
public record Shared(
        CollectionView collection,
        SharingView sharing,
        List<Reach> now,
        int animals,
        List<NodeChoice> nodes,
        List<GrantView> byHand) {}
