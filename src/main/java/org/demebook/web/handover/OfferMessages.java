package org.demebook.web.handover;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Words of the pages by which an animal is offered. */
@MessageBundle("offer")
public interface OfferMessages {
    // ── to offer
    // ──────────────────────────────────────────────────────────────────────────────────────────────────────

    @Message("Which animal goes?")
    String whichAnimal();

    @Message("There is no animal in your collections that could go. What is offered already waits under Hand-over.")
    String noAnimals();

    @Message("Ready to leave")
    String readyToLeave();

    @Message("Not ready yet")
    String notReadyYet();

    @Message("Grown animals")
    String grown();

    @Message("born {day}")
    String bornOn(String day);

    @Message("conditions open: {open}")
    String lacks(int open);

    @Message("likely ready {day}")
    String likely(String day);

    @Message("You can offer it all the same; its hand-over sheet then says what is missing.")
    String offerAllTheSame();

    @Message("To whom?")
    String toWhom();

    @Message("A member of this population")
    String toMember();

    @Message("It stays with you until they accept.")
    String toMemberHint();

    @Message("Somebody without an account")
    String toOutsider();

    @Message("You get a claim code to give along. For a sale, a gift or an exchange.")
    String toOutsiderHint();

    @Message("Sign-in name of the member")
    String signInName();

    @Message("Leave it empty for a claim code.")
    String signInNameHint();

    @Message("Name the member who gets it, or choose the claim code above.")
    String nameOrCode();

    @Message("With a claim code nobody is named: leave this empty, or choose the member above.")
    String codeNeedsNoName();

    @Message("Day, time limit, note")
    String moreToSay();

    @Message("Empty: 14 days, with a claim code 180. At most a year.")
    String standsUntilHint();

    @Message("What the receiver should know.")
    String noteHint();

    @Message("She is recorded as gravid.")
    String gravid();

    @Message(
            "The advice to carriers is not to transport pregnant animals. Wait until she has given birth; if she has to go now, say why and send it again.")
    String gravidAdvice();

    @Message("Why she has to go now")
    String whyNow();

    @Message("Kept with the record.")
    String whyNowHint();

    @Message("Offer it")
    String offer();
}
