package org.demebook.web.handover;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Words of the pages of claim codes. */
@MessageBundle("claim")
public interface ClaimMessages {
    // ── claim code
    // ────────────────────────────────────────────────────────────────────────────────────────────────────

    @Message("Claim code")
    String claimCode();

    @Message(
            "This code is shown this once and kept nowhere. Print it, write it down, or give it along with the sheet; if it is lost, you can get a fresh one.")
    String shownOnce();

    @Message("For the new keeper")
    String forTheNewKeeper();

    @Message(
            "With this code you take over the record of {number}: its ancestry, its rearing, its place in the studbook. No account is needed before.")
    String slip(String number);

    @Message("good until {day}, once")
    String goodUntil(String day);

    @Message("QR code of {link}")
    String qrOf(String link);

    @Message("Scan it, or open")
    String scanOrOpen();

    @Message("Print this slip")
    String printSlip();

    @Message("Hand-over sheet with this code (PDF)")
    String sheetWithCode();

    @Message("To the transfer")
    String toTransfer();

    // ── to claim
    // ──────────────────────────────────────────────────────────────────────────────────────────────────────

    @Message("Take over an animal with its code")
    String claimTitle();

    @Message(
            "Whoever gave you the animal gave you a code. With it you become a member of its population, and the animal's record comes to you.")
    String claimLede();

    @Message("Four groups of four, such as 7K2M-9QXD-0R4T-VB83. Case and spaces do not matter.")
    String claimCodeHint();

    @Message("my only collection there")
    String myOnly();

    @Message("Your account")
    String yourAccount();

    @Message("I have an account: sign in first")
    String haveAccount();

    @Message("By it other members offer you animals. 2 to 40 letters, digits, dots, dashes.")
    String nameHint();

    @Message("Your name in full")
    String fullName();

    @Message("Other keepers do not see it unless you say so.")
    String fullNameHint();

    @Message("Not with your sign-in name in it.")
    String passwordHint();

    @Message("Needed to open an account.")
    String neededForAccount();

    @Message("What to call your collection")
    String collectionLabel();

    @Message("Other members do not see it. Empty: My animals.")
    String collectionLabelHint();

    @Message("Take it over")
    String claim();

    @Message("The first weeks")
    String firstWeeks();

    @Message("Keep it apart from your other reptiles, with its own tools, and have it tested before it meets them.")
    String quarantine();

    @Message("With any sign of illness see a reptile veterinarian.")
    String veterinarian();
}
