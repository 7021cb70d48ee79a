package org.demebook.web.crossing;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.crossing.CrossingState;

/** Words of the pages of animals that go to, or come from, other nodes. */
@MessageBundle("crossing")
public interface CrossingMessages {
    // ── the list ─────────────────────────────────────────────────────────────────────────────────────────────────────

    @Message("Other nodes")
    String title();

    @Message("Animals that you give to keepers on other nodes, and that they give to you.")
    String lede();

    @Message("To a keeper on another node")
    String toAnotherNode();

    @Message("Offered to you from another node")
    String waitingForYou();

    @Message("Under way")
    String underWay();

    @Message("Nothing is under way between this node and another.")
    String nothingUnderWay();

    @Message("Past")
    String past();

    @Message("No animal has gone to another node or come from one yet.")
    String nothingPast();

    @Message("an animal")
    String anAnimal();

    // ── where it stands, for who gives ───────────────────────────────────────────────────────────────────────────────

    @Message("Offered to {to} on node {node} until {until}; it has not fetched the offer yet, as far as is known here.")
    String offeredUnfetched(String to, String node, String until);

    @Message("Offered to {to} on node {node} until {until}; the node has the offer, and {to} has not answered.")
    String offeredFetched(String to, String node, String until);

    @Message(
            "{to} accepted; released on {day}. It is on its way: until node {node} has taken it, it is with neither of you.")
    String onItsWay(String to, String node, String day);

    @Message("Arrived at {to} on node {node} on {day}.")
    String arrivedThere(String to, String node, String day);

    @Message("Node {node} was gone before it took it. Since {day} it has a keeper on this node.")
    String nodeGone(String node, String day);

    @Message("{to} refused it on {day}: it is with you as before.")
    String refusedThere(String to, String day);

    @Message("The offer was taken back on {day}: it is with you as before.")
    String withdrawnHere(String day);

    @Message("Nobody on node {node} answered until {until}: it is with you as before.")
    String expiredHere(String node, String until);

    // ── where it stands, for who receives ────────────────────────────────────────────────────────────────────────────

    @Message("{from} on node {node} offers it to you until {until}.")
    String offeredToYou(String from, String node, String until);

    @Message("a keeper")
    String aKeeper();

    @Message("You accepted it on {day}. It comes to you when node {node} has heard of that and released it.")
    String accepted(String node, String day);

    @Message("It arrived from node {node} on {day}: it is in your collection.")
    String arrivedHere(String node, String day);

    @Message("You refused it on {day}.")
    String refusedHere(String day);

    @Message("Node {node} took the offer back on {day}.")
    String withdrawnThere(String node, String day);

    @Message("The offer from node {node} stood until {until} and is over.")
    String expiredThere(String node, String until);

    @Message("Node {node} was heard of last at {moment}.")
    String heardOf(String node, String moment);

    @Message("Node {node} has not been heard of yet.")
    String neverHeardOf(String node);

    // ── to offer ─────────────────────────────────────────────────────────────────────────────────────────────────────

    @Message("Give {number} to a keeper on another node")
    String offerTitle(String number);

    @Message("Node")
    String node();

    @Message("By its code, as studbook numbers bear it.")
    String nodeHint();

    @Message("Sign-in name there")
    String signInName();

    @Message(
            "As the receiver told you. Nobody here can see whether there is such a name: an offer to nobody runs out, and the animal stays with you.")
    String signInNameHint();

    @Message("What goes along")
    String goesAlong();

    @Message(
            "Number, sex, birth, origin and locality go along, and parents by number; of further ancestors what their keepers grant to that node for transfers.")
    String alwaysGoes();

    @Message("Marks")
    String withMarks();

    @Message("Transponders")
    String withTransponders();

    @Message("The notes of its record")
    String withNotes();

    @Message("Your sign-in name")
    String withName();

    @Message("Empty: 14 days. At most a year.")
    String standsUntilHint();

    @Message("A loan stays on one node. Between nodes an animal is sold, given or exchanged.")
    String noLoans();

    @Message("This population is shared with no other node. Ask the administrator.")
    String notShared();

    // ── one of them ──────────────────────────────────────────────────────────────────────────────────────────────────

    @Message("What follows")
    String whatFollows();

    @Message(
            "While the offer stands, the animal is with you. Once it is accepted and this node hears of that, it is released at once, and cannot be taken back any more.")
    String giverNext();

    @Message("It cannot be taken back. If it should come back, ask {to} to offer it to you.")
    String cannotBeTakenBack(String to);

    @Message("Nothing to do: the nodes hand it over when they next hear of each other. Nothing is lost meanwhile.")
    String waitForNodes();

    @Message("What node {node} told of it")
    String toldOfIt(String node);

    @Message("Ancestors, as far as their keepers let you see them")
    String forebears();

    @Message("No ancestor was told.")
    String noForebears();

    @Message("Line")
    String line();

    @Message("Number")
    String number();

    @Message("not told")
    String notTold();

    @Message("Origin")
    String origin();

    @Message("Locality")
    String locality();

    @Message("Notes")
    String notes();

    @Message("The other side hears that you refused it, and no reason.")
    String refusalHint();

    @Message("Only you see it.")
    String onlyYouSeeIt();

    // ── one animal on two nodes ──────────────────────────────────────────────────────────────────────────────────────

    @Message("The same animal on two nodes")
    String sameTitle();

    @Message(
            "An animal that was registered on this node and on another. The keeper of the one claims it, the keeper of the other confirms it on their node. Both numbers stay, figures count one animal, and either side can take it back.")
    String sameLede();

    @Message("No animal of yours is claimed to be one of another node.")
    String noSame();

    @Message("You claim it of one on node {node}; its keeper there has not confirmed it, as far as is known here.")
    String sameClaimedHere(String node);

    @Message("A keeper on node {node} claims it. If it is so, confirm it; if not, leave it, and they stay two animals.")
    String sameClaimedThere(String node);

    @Message("You and a keeper on node {node} agree: it is one animal.")
    String sameConfirmed(String node);

    @Message("Taken back here or on node {node}: they are two animals.")
    String sameReversed(String node);

    @Message("What they are called between nodes")
    String betweenNodes();

    @Message("{number} is called {name} between nodes. Whoever may not see its number on the other node names it so.")
    String calledBetweenNodes(String number, String name);

    @Message("Claim that an animal of yours is one of another node")
    String claimSame();

    @Message("Your animal")
    String sameAnimal();

    @Message("Its studbook number. It is with you, and was registered on this node.")
    String sameAnimalHint();

    @Message("The other")
    String sameOther();

    @Message(
            "Its studbook number, where you can see it; else what it is called between nodes, as its keeper reads it there.")
    String sameOtherHint();

    @Message("Every node of the population reads what you claim, by what the two are called between nodes.")
    String sameIsPublic();

    @Message("Claim it")
    String claimIt();

    @Message("Confirm: it is one animal")
    String confirmIt();

    @Message("Take it back: two animals")
    String reverseIt();

    // ── animals of a node that is gone ───────────────────────────────────────────────────────────────────────────────

    @Message("Waiting for a keeper")
    String adopted();

    @Message(
            "Animals of a node that is gone for good. This node holds them now; who keeps each of them here is for a coordinator to say.")
    String adoptedLede();

    @Message(
            "Invite the former keepers to this node. Whoever says that an animal is theirs shows it to you: the sheet that came with it, its transponder, a photograph beside it. No node can tell that; you can.")
    String adoptedHow();

    @Message("No adopted animal waits for a keeper.")
    String nobodyWaits();

    @Message("{count} of a node that is gone")
    String adoptedCount(int count);

    @Message("an animal whose number was not told")
    String unnumbered();

    @Message("node {node}")
    String ofNode(String node);

    @Message("kept on node {node} before it was gone")
    String wasOnNode(String node);

    @Message("It stood in this register before: its record comes back to life.")
    String wasHere();

    @Message("It was never here: a record is made of what was told. What is left out, its keeper adds.")
    String wasNeverHere();

    @Message("Who keeps it")
    String whoKeepsIt();

    @Message("Sign-in name of the keeper")
    String placeTo();

    @Message("A member of this population. It comes into their first collection, and is theirs.")
    String placeToHint();

    @Message("Studbook number")
    String placeNumber();

    @Message("It was not told; as it stands on what the keeper shows you.")
    String placeNumberHint();

    @Message("Give it to this keeper")
    String place();

    @Message("Called between nodes")
    String adoptedBetweenNodes();

    @Message("Dam")
    String dam();

    @Message("Sire")
    String sire();

    // ── what is one of several ───────────────────────────────────────────────────────────────────────────────────────

    @Message
    String state(CrossingState one);
}
