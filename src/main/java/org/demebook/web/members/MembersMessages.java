package org.demebook.web.members;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.keeper.Role;
import org.demebook.taxon.BirthMode;

/** Words of the pages of members, invitations and populations. */
@MessageBundle("members")
public interface MembersMessages {
    @Message("Members and collections")
    String titleForAll();

    @Message("Who belongs to {population}, and where collections are as coarsely as their keepers state it.")
    String lede(String population);

    @Message("Who belongs to the population")
    String list();

    @Message("Sign-in name")
    String name();

    @Message("Role")
    String role();

    @Message("Change")
    String change();

    @Message
    String roleOf(Role role);

    @Message("Make {name} a coordinator")
    String makeCoordinator(String name);

    @Message("Make {name} a member")
    String makeMember(String name);

    @Message("{name} sees nothing of this population any more. The animals stay in the register.")
    String dismissHow(String name);

    @Message("End the membership of {name}")
    String dismiss(String name);

    @Message("Coordinators see who else belongs to the population. Ask one of them when you look for somebody.")
    String onlyCoordinators();

    @Message("Leave this population")
    String leaving();

    @Message("You see nothing of it any more; your animals stay in the register. A coordinator can take you in again.")
    String leaveHow();

    @Message("Leave")
    String leave();

    @Message("Take in a keeper of this node")
    String admitting();

    @Message("The name with which they sign in here.")
    String admitHint();

    @Message("Take in")
    String admit();

    @Message("Invite somebody who is not here yet")
    String inviting();

    @Message("You get a link that is good once, for 14 days. Send it to nobody but the one whom you invite.")
    String inviteHow();

    @Message("As")
    String inviteAs();

    @Message("Make a link")
    String invite();

    @Message("Invitation")
    String invitation();

    @Message("Send this link to the one whom you invite. It is shown this once and never again.")
    String shownOnce();

    @Message("Link")
    String link();

    @Message("It is good once, until {day}.")
    String goodUntil(String day);

    @Message("They come to this node and to no population yet.")
    String toNode();

    @Message("They come to {population}.")
    String toPopulation(String population);

    @Message("QR code of the link")
    String qr();

    @Message("Whoever stands beside you takes a picture of it with their phone.")
    String qrHow();

    @Message("Copy the link")
    String copy();

    @Message("Copied")
    String copied();

    @Message("Done")
    String ready();

    @Message("My collections")
    String collections();

    @Message("You act for no collection here yet. Open one: every animal is in a collection.")
    String noCollection();

    @Message("Region of {collection}")
    String regionOf(String collection);

    @Message("Others see it only as far as you share it.")
    String regionHint();

    @Message("not stated")
    String noRegion();

    @Message("Keep")
    String keep();

    @Message("Open a collection")
    String opening();

    @Message("What you call it")
    String label();

    @Message("A room, a rack, a house. Other members do not see it.")
    String labelHint();

    @Message("Others of the same household")
    String household();

    @Message(
            "Their sign-in names, separated by commas. They act for the collection as you do, and published counts take you as one household.")
    String householdHint();

    @Message("Open")
    String open();

    @Message("Regions")
    String regions();

    @Message("Large parts of where keepers live, never a place. Published counts and plans use them.")
    String regionsHow();

    @Message("The coordinators have fixed no regions.")
    String noRegions();

    @Message("Regions, one a line")
    String regionNames();

    @Message("In the order in which counts are published, 12 at most.")
    String regionNamesHint();

    @Message("Fix the regions")
    String fixRegions();

    @Message("How far apart they are")
    String distances();

    @Message(
            "From the middle of one to the middle of the other. Leave empty what nobody knows. Animals may need a permit to cross a border.")
    String distancesHow();

    @Message("From and to")
    String pair();

    @Message("{one} and {other}")
    String pairOf(String one, String other);

    @Message("Kilometres")
    String kilometres();

    @Message("Border")
    String border();

    @Message("a border between")
    String borderBetween();

    @Message("no border")
    String noBorder();

    @Message("not known")
    String notKnown();

    @Message("A whole number from 0 to {most}.")
    String wholeNumber(int most);

    @Message("Keep the distances")
    String keepDistances();

    @Message("You are invited")
    String youAreInvited();

    @Message("{population}: {taxon}, {locality}. Your role: {role}.")
    String invitedTo(String population, String taxon, String locality, String role);

    @Message("To this node; a coordinator takes you into a population afterwards.")
    String invitedToNode();

    @Message("You are signed in as {name}.")
    String signedInAs(String name);

    @Message("Join as {name}")
    String join(String name);

    @Message("Take the invitation")
    String take();

    @Message("I have an account here")
    String haveAccount();

    @Message("New here")
    String newHere();

    @Message("2 to 40 letters, digits, dots, dashes. Others offer you animals by it.")
    String nameHint();

    @Message("Full name")
    String fullName();

    @Message("It stands on the hand-over sheets that you print.")
    String fullNameHint();

    @Message("Password")
    String password();

    @Message("10 characters at least; several words are easy to keep in mind.")
    String passwordHint();

    @Message("Open my account")
    String openAccount();

    @Message("This node")
    String node();

    @Message("Invite to this node")
    String inviteToNode();

    @Message("Somebody who is to found a population of their own, or is taken into one later.")
    String inviteToNodeHow();

    @Message("Populations")
    String populations();

    @Message("Found a population")
    String found();

    @Message("The animals of one taxon from one locality, managed as one breeding unit. You coordinate it.")
    String foundHow();

    @Message("Code")
    String code();

    @Message("2 to 6 capital letters and digits, a letter first. It begins every studbook number and never changes.")
    String codeHint();

    @Message("What keepers call it")
    String populationName();

    @Message("Taxon")
    String taxon();

    @Message("The scientific name, as far as it is settled.")
    String taxonHint();

    @Message("Locality")
    String locality();

    @Message("Where its founders come from.")
    String localityHint();

    @Message("Young")
    String birthMode();

    @Message
    String bearing(BirthMode mode);

    @Message("Figures of its biology")
    String profile();

    @Message("Gestation, litters, ages, rearing: what checks and predictions reckon with.")
    String profileHint();

    @Message("The usual ones of small island boas")
    String usualProfile();

    @Message("Those of {population}")
    String profileOf(String population);
}
