package org.demebook.web.counts;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.census.CountPreparation;

/** Words of published counts. */
@MessageBundle("counts")
public interface CountsMessages {
    @Message("Published counts of {name}")
    String title(String name);

    @Message(
            "How many animals are kept, for everybody to read. Nobody needs to sign in, and nothing here tells what one keeper has.")
    String lede();

    @Message(
            "No counts have been published under {population}. Counts appear here when a coordinator of a population publishes them.")
    String none(String population);

    @Message("Count and publish")
    String publish();

    @Message("Counted on")
    String countedOn();

    @Message("Living animals")
    String living();

    @Message("Keepers")
    String keepers();

    @Message("Gene diversity")
    String geneDiversity();

    @Message("0 to 1, of the animals counted")
    String geneDiversityOf();

    @Message("Founder genome equivalents")
    String genomeEquivalents();

    @Message("unrelated founders")
    String genomeEquivalentsOf();

    @Message("The latest releases")
    String releases();

    @Message("Earlier releases")
    String earlier();

    @Message("Counted on {day}")
    String on(String day);

    @Message("Published on {day}. A release is never changed.")
    String publishedOn(String day);

    @Message("All published counts")
    String allReleases();

    @Message("By sex and age")
    String bySexAndAge();

    @Message("By decade of birth")
    String byDecade();

    @Message("By region")
    String byRegion();

    @Message("Age")
    String age();

    @Message("Born")
    String born();

    @Message("Region")
    String region();

    @Message("Animals")
    String animals();

    @Message("withheld")
    String withheld();

    @Message("{low} to {high}")
    String between(int low, int high);

    @Message("{low} or more")
    String atLeast(int low);

    @Message("Withheld does not mean none. Beside each such count stands what everybody can work out from the others.")
    String whatWithheldMeans();

    @Message("Females")
    String females();

    @Message("Males")
    String males();

    @Message("Sex unknown")
    String unknownSex();

    @Message("All")
    String all();

    @Message("Young, under a year")
    String young();

    @Message("Juvenile")
    String juvenile();

    @Message("Young and juvenile")
    String immature();

    @Message("Adult")
    String adult();

    @Message("Age unknown")
    String unknownAge();

    @Message("not known")
    String unknown();

    @Message("{year} to {last}")
    String decade(String year, String last);

    @Message("before {year}")
    String before(String year);

    @Message("not stated")
    String notStated();

    @Message("fewer than 3")
    String fewKeepers();

    @Message("more than 50")
    String manyKeepers();

    @Message("To take along")
    String downloads();

    @Message("Table (CSV)")
    String csv();

    @Message("Darwin Core archive, by sex and age (ZIP)")
    String archive();

    @Message("Darwin Core archive, by region (ZIP)")
    String archiveByRegion();

    @Message("The same animals once more: add up the records of one of the two archives.")
    String oneOfTheTwo();

    @Message("For programs (JSON)")
    String json();

    @Message("How it was counted")
    String method();

    // releasing

    @Message("Count and publish")
    String newTitle();

    @Message("The animals that live on a day are counted, and the counts are published for everybody.")
    String newLede();

    @Message("What is published")
    String whatIsPublished();

    @Message(
            "How many animals live, by sex and age, by decade of birth and by region; gene diversity and founder genome equivalents, if three keepers contribute. Only animals whose keepers granted to be counted.")
    String published1();

    @Message(
            "Counts that would tell what one keeper has are withheld, and so are the fewest others from which they would follow, also together with earlier releases. If nothing can be told safely, nothing is published.")
    String published2();

    @Message("There is no look beforehand: whoever could look at the counts of many days would learn what is withheld.")
    String published3();

    @Message(
            "A release stays for good: it cannot be changed or taken back, and later releases tell less where little has changed. Once a year is usual.")
    String published4();

    @Message("Day on which the animals are counted")
    String dayToCount();

    @Message("Today, or a day that has passed. Animals are counted where they are held now.")
    String dayToCountHint();

    @Message("Published for good")
    String understood();

    @Message("I know that everybody will read it, and that nobody can take it back.")
    String understand();

    @Message("Tick this if the counts are to be published for good.")
    String notUnderstood();

    @Message("Preparing the counts of {day}")
    String preparing(String day);

    @Message
    String stage(CountPreparation.Stage stage);

    @Message(
            "{seconds} seconds so far. It mostly takes some seconds, and up to a minute where much has to be withheld. You may leave this page: it goes on.")
    String sofar(long seconds);

    @Message("Look again")
    String lookAgain();

    @Message("The published counts")
    String toRelease();

    @Message("Choose another day")
    String another();

    // protection

    @Message("How published counts are protected")
    String rulesTitle();

    @Message(
            "For coordinators alone: whoever knows these numbers can undo some of the protection. They hold from the next release on.")
    String rulesLede();

    @Message("Fewest keepers behind a count")
    String fewestKeepers();

    @Message("3 to 10; 3 is usual, more seldom makes sense. Keepers of one household are one.")
    String fewestKeepersHint();

    @Message("Closest estimate, in per cent")
    String percent();

    @Message(
            "1 to 100; 20 is usual. Nobody may be able to work out another keeper's part of a count more closely than this.")
    String percentHint();

    @Message("Kept.")
    String kept();

    @Message("Keep")
    String keep();

    @Message("My protection in published counts")
    String waiverTitle();

    @Message(
            "Counts that would tell what you have are withheld. You can do without that: then more can be told, and everybody may learn how many animals you have. Of a household, all have to.")
    String waiverLede();

    @Message("Your numbers in published counts")
    String waived();

    @Message("Protect them")
    String isProtected();

    @Message("They may be told")
    String mayBeTold();

    @Message(
            "It holds from the next release on; what is published stays. Whether your animals are counted at all is a matter of sharing.")
    String waiverHint();

    @Message("To sharing")
    String toSharing();
}
