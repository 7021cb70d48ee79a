package org.demebook.federation;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.demebook.rest.ShownTo.Whom;
import org.jspecify.annotations.Nullable;

/** What administrators see and send. */
public final class Views {
    private static final String NODE_ID = "[A-Za-z0-9_-]{43}";
    private static final String NOT_A_NODE_ID = "is not the id of a node: 43 letters, digits, hyphens and underscores";

    private Views() {}

    /**
     * A population that is shared with other nodes.
     *
     * @param population its id, the same on every node; with {@code founder} what another node joins it by
     * @param founder id of the node whose charter holds
     * @param fenced this node writes nothing to others until it has heard from each how far its own journal went
     * @param awaited ids of the nodes that it still has to hear from
     * @param nodes those that have a seat, this one included, in the order of their ids; none as long as the charter is not known
     * @param missingReceipts of what was withdrawn: who has not said yet that they erased it
     * @param alarms how many there are
     */
    @ShownTo(Whom.ADMINISTRATORS)
    public record FederationView(
            UUID population,
            String code,
            String founder,
            boolean fenced,
            List<String> awaited,
            List<SharingNode> nodes,
            List<MissingReceipt> missingReceipts,
            int alarms) {}

    /**
     * A node with a seat.
     *
     * @param code with which it issues studbook numbers
     * @param name what it is called here; null for a node that this one does not talk with
     * @param thisNode whether it is this one
     * @param setAside neither followed nor waited for in this population
     * @param entries how many entries of its journal are held here
     * @param head the last head of it that was checked here, a signed note; null for none
     * @param headEntries how many entries that head covers
     * @param cosigners ids of nodes whose cosignatures it carries
     * @param entriesBehind how many more entries there are signs of
     * @param secondsBehind since when not all that it has was here; null where that never was since this server started
     * @param gone what nodes say of it; null where none said that it is gone for good
     */
    @ShownTo(Whom.ADMINISTRATORS)
    public record SharingNode(
            String node,
            String fingerprint,
            String code,
            @Nullable String name,
            boolean thisNode,
            boolean setAside,
            long entries,
            @Nullable String head,
            long headEntries,
            List<String> cosigners,
            long entriesBehind,
            @Nullable Long secondsBehind,
            @Nullable GoneView gone) {}

    /**
     * Something was withdrawn, and these nodes have not said yet that they erased it.
     *
     * @param withdrawal number of the entry in this node's journal
     */
    @ShownTo(Whom.ADMINISTRATORS)
    public record MissingReceipt(long withdrawal, List<String> nodes) {}

    /**
     * Something that an honest and healthy node does not do.
     *
     * @param kind one of those in docs/federation/failures.md
     * @param accused id of the node whose signature stands under it where {@code proven}, else of the one that delivered it
     * @param evidence what shows it to anybody; null where there is no more than this node's word
     */
    @ShownTo(Whom.ADMINISTRATORS)
    public record AlarmView(
            String id,
            String kind,
            String accused,
            boolean proven,
            String sentence,
            Instant noticedAt,
            @Nullable Map<String, Object> evidence) {}

    /**
     * A node that gets a seat.
     *
     * @param node its id, without spaces
     * @param code with which it issues studbook numbers; no other node of the population has it
     */
    public record NewSeat(
            @NotNull @Pattern(regexp = NODE_ID, message = NOT_A_NODE_ID)
            String node,

            @NotNull
            @Pattern(regexp = "[A-Z1-9][A-Z0-9]{0,3}", message = "takes 1 to 4 capital letters and digits, no 0 first")
            String code) {}

    /**
     * A population to be joined.
     *
     * @param population its id, as the founding node's administrator sees it
     * @param founder id of the node that founded it
     */
    public record NewFederatedPopulation(
            @NotNull UUID population,

            @NotNull @Pattern(regexp = NODE_ID, message = NOT_A_NODE_ID)
            String founder) {}

    /**
     * @param gone id of a node that is gone for good
     * @param heir id of the node that may adopt its animals; it can be this one
     */
    public record NewHeir(
            @NotNull @Pattern(regexp = NODE_ID, message = NOT_A_NODE_ID)
            String gone,

            @NotNull @Pattern(regexp = NODE_ID, message = NOT_A_NODE_ID)
            String heir) {}

    /**
     * What nodes say of one that is gone for good, as far as it is known here.
     *
     * @param needed how many have to name the same heir before it may adopt
     */
    @ShownTo(Whom.ADMINISTRATORS)
    public record GoneView(String gone, List<Heir> heirs, int needed) {}

    /**
     * A node that may adopt, in the eyes of some.
     *
     * @param namedBy ids of the nodes that say so
     */
    @ShownTo(Whom.ADMINISTRATORS)
    public record Heir(String node, List<String> namedBy) {}

    /** @param gone id of a node that is gone for good; more than half of the others named this one as the heir of its animals */
    public record NewAdoption(
            @NotNull @Pattern(regexp = NODE_ID, message = NOT_A_NODE_ID)
            String gone) {}

    /** @param animals what they are called between nodes: held by this node from now on */
    @ShownTo(Whom.ADMINISTRATORS)
    public record AdoptionView(String gone, List<String> animals) {}
}
