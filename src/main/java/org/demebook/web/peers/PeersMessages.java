package org.demebook.web.peers;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Words of the pages of other nodes. */
@MessageBundle("peers")
public interface PeersMessages {
    @Message("Nodes")
    String title();

    @Message("Other nodes that this one talks with. Only administrators see this.")
    String lede();

    @Message("This node")
    String thisNode();

    @Message("Fingerprint, to be read aloud")
    String fingerprint();

    @Message(
            "Read it to the other administrator by telephone or face to face, and have theirs read to you. The network may lie.")
    String fingerprintHint();

    @Message(
            "This node talks with no other. It was started without federation; deploy/federation-keys.md says how to turn it on.")
    String off();

    @Message("Nodes that this one talks with")
    String others();

    @Message("None yet.")
    String none();

    @Message("Let a node in")
    String letIn();

    @Message("Address")
    String address();

    @Message("https://host:port, as its administrator told you. No other address is ever called for it.")
    String addressHint();

    @Message("Its fingerprint")
    String itsFingerprint();

    @Message("Type it as it was read to you: 43 characters, capitals matter, spaces do not.")
    String itsFingerprintHint();

    @Message("Name")
    String name();

    @Message("What you call it here.")
    String nameHint();

    @Message("Compare and let in")
    String compare();

    @Message("Set aside")
    String setAside();

    @Message("Take up again")
    String readmit();

    @Message("set aside")
    String isAside();

    @Message("A node that will not come back")
    String gone();

    @Message(
            "Its animals can be held by another node once more than half of the nodes that are left have named the same heir. Agree with their administrators first: this node names one heir, and cannot take it back. The node is set aside here.")
    String goneHint();

    @Message("Gone for good")
    String isGone();

    @Message("Heir of its animals")
    String heir();

    @Message("Name the heir")
    String nameHeir();

    @Message("{gone}: {heir} is named by {named} of {needed} that are needed.")
    String heirOf(String gone, String heir, int named, int needed);

    @Message("Hold its animals here")
    String adopt();

    @Message("heard of at {moment}")
    String heardOf(String moment);

    @Message("not heard of yet")
    String neverHeardOf();

    @Message("Shared populations")
    String shared();

    @Message("No population is shared with other nodes.")
    String noneShared();

    @Message("Population {code}")
    String population(String code);

    @Message(
            "This node writes nothing to others yet: it first hears from each of them how far its own journal went. Still awaited:")
    String fenced();

    @Message("This node may write.")
    String open();

    @Message("Seats")
    String seats();

    @Message("Node")
    String node();

    @Message("Entries here")
    String entries();

    @Message("Behind")
    String behind();

    @Message("Last head")
    String head();

    @Message("{entries} entries, cosigned by {cosigners}")
    String headOf(long entries, int cosigners);

    @Message("none seen")
    String noHead();

    @Message("{entries} entries")
    String entriesBehind(long entries);

    @Message("up to date {seconds} s ago")
    String secondsBehind(long seconds);

    @Message("not caught up since the start")
    String neverCaughtUp();

    @Message("this node")
    String itself();

    @Message("Give a seat")
    String giveSeat();

    @Message("Node id")
    String nodeId();

    @Message("Code of its studbook numbers")
    String code();

    @Message("1 to 4 capital letters and digits, no 0 first.")
    String codeHint();

    @Message("Receipts that are missing")
    String receipts();

    @Message("Withdrawal {entry}: not erased yet, as far as is known, at {nodes}")
    String missing(long entry, String nodes);

    @Message("Alarms")
    String alarms();

    @Message("Nothing that an honest and healthy node does not do was noticed.")
    String noAlarms();

    @Message("proven")
    String proven();

    @Message("not proven")
    String unproven();

    @Message("Proof (JSON)")
    String proof();
}
