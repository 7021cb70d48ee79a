package org.demebook.web.handover;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.transfer.Kind;
import org.demebook.transfer.State;

/** Words of the pages of hand-over: transfers, and what the others have in common with them. */
@MessageBundle("handover")
public interface HandoverMessages {
    // ── the list
    // ──────────────────────────────────────────────────────────────────────────────────────────────────────

    @Message("Hand an animal over")
    String handOver();

    @Message("Claim with a code")
    String claimByCode();

    @Message("Offered to you")
    String waitingForYou();

    @Message("Nothing is offered to you. Whoever wants to give you an animal needs your sign-in name.")
    String nothingWaits();

    @Message("You offered")
    String byYou();

    @Message("Nothing of yours waits for an answer.")
    String nothingOffered();

    @Message("Past")
    String past();

    @Message("No animal has come to you or left you here yet.")
    String nothingPast();

    @Message("Animal")
    String animal();

    @Message("How it changes hands")
    String how();

    @Message("State")
    String became();

    @Message("What happened")
    String told();

    @Message("From {from}.")
    String fromSomebody(String from);

    @Message("Sex")
    String sex();

    @Message("until {day}")
    String until(String day);

    @Message("Accept")
    String accept();

    @Message("Look first")
    String look();

    @Message("Into")
    String into();

    @Message("in dispute")
    String inDispute();

    // ── where a transfer stands, for who looks
    // ────────────────────────────────────────────────────────────────────────

    @Message("a keeper who has left")
    String somebodyGone();

    @Message("Offered to {to}, who can accept it until {until}.")
    String offeredGiven(String to, String until);

    @Message("{from} offers it to you until {until}.")
    String offeredReceived(String from, String until);

    @Message("{to} accepted it on {day}.")
    String acceptedGiven(String to, String day);

    @Message("You accepted it from {from} on {day}: it is in your collection.")
    String acceptedReceived(String from, String day);

    @Message("{to} refused it on {day}: it is with you as before.")
    String refusedGiven(String to, String day);

    @Message("You refused it on {day}.")
    String refusedReceived(String day);

    @Message("You took it back on {day}.")
    String withdrawnGiven(String day);

    @Message("{from} took the offer back on {day}.")
    String withdrawnReceived(String from, String day);

    @Message("{to} did not answer until {until}: it is with you as before.")
    String expiredGiven(String to, String until);

    @Message("The offer of {from} stood until {until} and is over.")
    String expiredReceived(String from, String until);

    @Message("Handed out on {day}; nobody has claimed it yet. The code is good until {until}.")
    String handedOut(String day, String until);

    @Message(
            "Handed out on {day}; nobody has claimed it, and the code was good until {until}. Get a fresh one, or take the animal back.")
    String handedOutWithOldCode(String day, String until);

    @Message("{to} claimed it on {day}.")
    String claimedGiven(String to, String day);

    @Message("You claimed it from {from} on {day}: it is in your collection.")
    String claimedReceived(String from, String day);

    // ── one transfer
    // ──────────────────────────────────────────────────────────────────────────────────────────────────

    @Message("Your answer")
    String yourAnswer();

    @Message("What you can do")
    String whatYouCanDo();

    @Message("What next")
    String whatNext();

    @Message("Where it stands")
    String whereItStands();

    @Message("Handed over on")
    String handedOverOn();

    @Message("The day on which you got it; empty when it is as the giver said.")
    String dayOfReceiver();

    @Message("Empty until it has left you.")
    String dayOfGiver();

    @Message("Refuse it")
    String refuseIt();

    @Message("Refuse")
    String refuse();

    @Message("Take it back")
    String takeBack();

    @Message("Withdraw")
    String withdraw();

    @Message("Reason")
    String reason();

    @Message("Both of you see it. You need not say any.")
    String bothSeeIt();

    @Message(
            "A lost code cannot be shown again: the register does not have it. Get a fresh one, and the one before is void.")
    String codeLost();

    @Message("Good until")
    String codeUntil();

    @Message("Empty: 180 days. At most a year.")
    String codeUntilHint();

    @Message("Get a fresh code")
    String freshCode();

    @Message("Hand-over sheet")
    String sheet();

    @Message(
            "It is in your collection. Keep it apart from your other reptiles until its quarantine is over, and note its meals and sheds from the first day.")
    String nowYours();

    @Message("It is with its new keeper. What you wrote down of it stays yours to read.")
    String nowTheirs();

    @Message("Nothing changed: it is where it was.")
    String stillYours();

    @Message("Nothing changed: it is with its keeper. They can offer it anew.")
    String stillTheirs();

    @Message("Open the animal")
    String openAnimal();

    @Message("Offer it anew")
    String offerAnew();

    @Message("It is with me all the same")
    String stillWithMe();

    @Message("It is reported in two places, and changes hands no more until that is settled.")
    String disputedHere();

    @Message("See the dispute")
    String openDispute();

    @Message("Born")
    String born();

    @Message("From")
    String giver();

    @Message("To")
    String receiver();

    @Message("not claimed yet")
    String notClaimed();

    @Message("Offered on")
    String offeredOn();

    @Message("Stands until")
    String standsUntil();

    @Message("Ended on")
    String endedOn();

    @Message("Note")
    String note();

    @Message("What each of you sees")
    String whatEachSees();

    @Message("While the offer stands, the receiver sees identity and parents of the animal, whatever else is shared.")
    String seenWhileOpen();

    @Message(
            "With the animal go its identity, parents, sheds, meals, measures and tests; on a sale, the giver's notes do not.")
    String seenAfterwards();

    @Message("What is written down afterwards the giver does not see, unless it is granted.")
    String seenByGiver();

    @Message("Your sign-in names are between the two of you.")
    String namesBetweenYou();

    @Message("Before it travels")
    String beforeItTravels();

    @Message(
            "Permits, marking, proof of origin and bans differ by place and year: ask your authority before the animal moves. Nothing here is a permit or a proof of lawful origin.")
    String permits();

    @Message(
            "A gravid or sick animal should not travel. No meal for some days before; alone in a breathable bag in a rigid, ventilated box, neither hot nor cold.")
    String journey();

    @Message(
            "Reptiles can carry Salmonella without being ill: wash your hands after touching it and keep it out of kitchens. Children under five, pregnant, old and immunocompromised people should not handle it.")
    String salmonella();

    // ── what the readiness check asks for
    // ─────────────────────────────────────────────────────────────────────────────

    @Message("Age")
    String ofAge();

    @Message("Sheds")
    String ofSheds();

    @Message("Meals")
    String ofMeals();

    @Message("Last meal")
    String ofLastMeal();

    @Message("Mass")
    String ofMass();

    @Message("Health")
    String ofHealth();

    @Message("Sex")
    String ofSex();

    @Message("Photograph")
    String ofPhotograph();

    // ── what is one of several
    // ──────────────────────────────────────────────────────────────────────────────────────────

    @Message
    String kind(Kind one);

    @Message
    String state(State one);
}
