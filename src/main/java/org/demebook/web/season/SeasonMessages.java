package org.demebook.web.season;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.programme.Answer;
import org.demebook.programme.AnswerReason;
import org.demebook.programme.DraftState;
import org.demebook.programme.DraftView;
import org.demebook.programme.LitterState;
import org.demebook.programme.OutcomeView.What;
import org.demebook.programme.RecommendationView.Doing;
import org.demebook.programme.Side;

/** Words of the pages of the season. */
@MessageBundle("season")
public interface SeasonMessages {
    @Message("Pages of the season")
    String ways();

    @Message("Plan")
    String plan();

    @Message("All plans")
    String plans();

    @Message("Answers")
    String answers();

    @Message("Outcome")
    String outcome();

    @Message("Years ahead")
    String outlook();

    @Message("Drafts")
    String drafts();

    @Message("Draft")
    String draft();

    @Message("Older ones")
    String older();

    @Message("Season, pairing on {day}")
    String seasonOf(String day);

    @Message("Issued on {day}")
    String issuedOn(String day);

    @Message("in force")
    String inForce();

    @Message("no longer in force")
    String superseded();

    @Message("follows an earlier one")
    String followsOne();

    @Message("This plan is not in force any more: it is there to look at, not to answer.")
    String notInForce();

    @Message("To the plan in force")
    String toPlanInForce();

    @Message(
            "No plan has been issued yet. A coordinator has one computed and issues it; then it says here what it recommends for your animals. You can already say what your collections can bear.")
    String noPlan();

    @Message("No plan has been issued yet. Have a draft computed, look at it, and issue it.")
    String noPlanYet();

    @Message("What I can bear")
    String sayWhatYouCanBear();

    @Message("Your animals")
    String yours();

    @Message("No living animal of known sex is in a collection of yours, so the plan recommends nothing for you.")
    String noAnimals();

    @Message("The plan proposes no litter of your animals.")
    String noneOfYours();

    @Message("{#if count == 1}One answer of yours is wanted.{#else}{count} answers of yours are wanted.{/if}")
    String wanted(long count);

    @Message("Everything of yours is answered. You may change an answer as long as the plan is in force.")
    String allAnswered();

    @Message(
            "To accept is to consent: when the other side accepts too, both may read number, collection and keepers of the other animal for twelve months. You find it among what you share. Your reason and your note are for coordinators alone.")
    String consent();

    @Message("Partner")
    String partner();

    @Message("an animal that its keeper does not show to you")
    String partnerNotShown();

    @Message("Put together on")
    String together();

    @Message("Journey")
    String journey();

    @Message("he goes to her, and arrives by {day}")
    String heGoes(String day);

    @Message("he comes to you, and arrives by {day}")
    String arrives(String day);

    @Message("none: they live together")
    String sameCollection();

    @Message("Young to keep")
    String youngToKeep();

    @Message("F of the young")
    String inbreeding();

    @Message("State")
    String stateIs();

    @Message("you: {answer}")
    String youSaid(String answer);

    @Message("Your note")
    String yourNote();

    @Message("Partner lives in")
    String livesIn();

    @Message("Kept by")
    String keptBy();

    @Message(
            "Both sides accepted. Write to each other: who travels, which tests, which quarantine. Ask your authority before an animal crosses a border.")
    String agreedNext();

    @Message("Accept")
    String accept();

    @Message("Not now, or not this pair")
    String notThis();

    @Message("Change the answer")
    String change();

    @Message("Why")
    String why();

    @Message("Choose a reason")
    String choose();

    @Message("Choose a reason: it also says what you answer.")
    String chooseOne();

    @Message("Note")
    String note();

    @Message("Coordinators alone read it.")
    String noteHint();

    @Message("Answer so")
    String answerSo();

    @Message("Next best, by what you may see:")
    String instead();

    @Message("F {inbreeding}, keep {keep}")
    String insteadFigures(String inbreeding, int keep);

    @Message("Ask a coordinator to plan anew.")
    String askAnew();

    @Message("No litter this season")
    String others();

    @Message("And {count} more.")
    String more(long count);

    @Message("The whole plan, with its figures, is for coordinators; here stands what it means for your animals.")
    String coordinatorsSee();

    @Message("The plan in two figures")
    String twoFigures();

    @Message("Gene diversity")
    String geneDiversity();

    @Message("Gene diversity after the season")
    String geneDiversityAfter();

    @Message("now {value}")
    String now(String value);

    @Message("Mean F of the young")
    String meanInbreeding();

    @Message("proven: with these litters none could be less inbred")
    String leastInbred();

    @Message("No plan exceeds")
    String atBest();

    @Message("the plan is within {percent} % of it")
    String within(String percent);

    @Message("the plan reaches it")
    String nothingLeft();

    @Message("With agreed litters alone")
    String agreedOnly();

    @Message("Litters")
    String litters();

    @Message("{young} young reckoned with")
    String reckoned(String young);

    @Message("No litter would raise gene diversity under these constraints.")
    String noLitters();

    @Message("It is proven that no plan under these constraints keeps more gene diversity.")
    String bestInWords();

    @Message(
            "Mean kinship is at most {percent} % above the least that is possible: it is proven that no plan under these constraints keeps more gene diversity than {best}.")
    String gapInWords(String percent, String best);

    @Message(
            "The plan looks ahead: animals that will soon be too old count for less. With every living animal counted as one, gene diversity goes from {before} to {after}.")
    String living(String before, String after);

    @Message("The search was stopped before its time; a longer one may find a better plan.")
    String stoppedEarly();

    @Message("{answered} of {sides} sides have answered.")
    String heard(int answered, int sides);

    @Message("Read the answers")
    String readAnswers();

    @Message("Plan anew around the answers")
    String planAnew();

    @Message("What each litter adds, what each refusal costs")
    String whatEachAdds();

    @Message("Dam × sire")
    String pair();

    @Message("Keep")
    String keep();

    @Message("Young reckoned with")
    String youngReckoned();

    @Message("Adds")
    String adds();

    @Message("Costs if off: the pair")
    String costPair();

    @Message("all of hers")
    String costHers();

    @Message("all of his")
    String costHis();

    @Message("What if")
    String whatIf();

    @Message("without")
    String without();

    @Message("no plan left")
    String noPlanLeft();

    @Message("not yet")
    String notYetKnown();

    @Message(
            "Adds: gene diversity that would be missing without this litter. Costs: gene diversity that is lost at most when the season is planned anew around the refusal; below 0 it would gain.")
    String costsMean();

    @Message("There is no litter in it whose animals you may see.")
    String noLittersShown();

    @Message("What less inbreeding would cost")
    String curve();

    @Message(
            "Each point is a plan: from most gene diversity to the least inbred young. No plan lies to the right of the line.")
    String curveShows();

    @Message("Plans by both figures")
    String curveTitle();

    @Message("Gene diversity by years")
    String aheadTitle();

    @Message("There is nothing to trade: no plan with these litters has less inbred young.")
    String curveAlone();

    @Message("It was not computed.")
    String curveNotYet();

    @Message("As a table")
    String asTable();

    @Message("There is nothing to draw yet.")
    String nothingToDraw();

    @Message("Plan {number}")
    String otherPlan(int number);

    @Message("This plan")
    String thisPlan();

    @Message("At best")
    String bound();

    @Message("Possible plan")
    String possible();

    @Message("What")
    String what();

    @Message("none")
    String noFigure();

    @Message("Anyone can compute it again")
    String again();

    @Message(
            "What the plan was computed with is kept beside the journal and named by its SHA-256; computing again compares every litter and every figure to the last bit. It takes as long as it took the first time.")
    String againLede();

    @Message("Computed from")
    String computedFrom();

    @Message("Compute it again")
    String computeAgain();

    @Message("computing")
    String computing();

    @Message("It came out the same")
    String equal();

    @Message("It came out otherwise")
    String differs();

    @Message("Every litter and every figure is equal, to the last bit.")
    String equalMeans();

    @Message("{count} things differ. Tell the administrator of this node.")
    String differsMeans(int count);

    @Message("Somebody had stopped its search, so only the figures of its pairs were computed again.")
    String figuresOnly();

    @Message("What was said")
    String said();

    @Message("nothing so far")
    String nobodySaid();

    @Message("What came of the plan")
    String outcomeTitle();

    @Message("By the births that you may see.")
    String outcomeAll();

    @Message("The litters of your own animals.")
    String outcomeYours();

    @Message("born as planned")
    String bornAsPlanned();

    @Message("of {count} litters")
    String ofLitters(int count);

    @Message("agreed by both sides")
    String agreed();

    @Message("young alive")
    String youngAlive();

    @Message("Gene diversity today")
    String geneDiversityToday();

    @Message("{value} expected after the season")
    String expectedAfter(String value);

    @Message("The plan proposes no litter of your animals, so there is nothing to hold against it.")
    String noLittersOfYours();

    @Message("What came of it")
    String whatCame();

    @Message("Born")
    String born();

    @Message("Young")
    String young();

    @Message("Alive")
    String alive();

    @Message("withheld")
    String withheld();

    @Message("Plans that you had computed and nobody issued. They are forgotten two hours after you last looked.")
    String draftsLede();

    @Message("New draft")
    String newDraft();

    @Message("There are no drafts. Have one computed to look at it; nothing happens until you issue it.")
    String noDrafts();

    @Message("Draft of")
    String draftOf();

    @Message("with imagined founders")
    String imagined();

    @Message(
            "Which pairs should have a litter, so that most gene diversity is kept? What keepers state of their animals and collections holds besides; nothing happens until you issue it.")
    String newDraftLede();

    @Message("The season")
    String theSeason();

    @Message("Ages, rests, tests and quarantine are counted to this day.")
    String pairOnHint();

    @Message("Litters at most")
    String littersAtMost();

    @Message("Fewer where more would not help. Empty: a quarter of the living.")
    String littersAtMostHint();

    @Message("Young kept of each litter")
    String youngKept();

    @Message("If it is born. Empty: 2.")
    String youngKeptHint();

    @Message("No young more inbred than")
    String limit();

    @Message("1/4: full siblings; 1/8: half siblings.")
    String limitHint();

    @Message("Answers given so far")
    String answersGiven();

    @Message("Follow the plan of {day}")
    String follow(String day);

    @Message("What both keepers accepted stays; what one of them cannot or does not want is not proposed again.")
    String followHint();

    @Message("Pairs and animals")
    String pairsAndAnimals();

    @Message("Pairs that are to be")
    String pairsTogether();

    @Message("One a line: number of the dam, number of the sire.")
    String pairsHint();

    @Message("Pairs that are not to be")
    String pairsApart();

    @Message("Likewise.")
    String pairsApartHint();

    @Message("Animals that are not to breed")
    String leftOut();

    @Message("Their numbers, one a line.")
    String leftOutHint();

    @Message("What if")
    String imagine();

    @Message("What is not so, and only looked at. A draft with founders that do not exist cannot be issued.")
    String imagineHint();

    @Message("Female founders more")
    String newFemales();

    @Message("Male founders more")
    String newMales();

    @Message("Unrelated to all.")
    String newFoundersHint();

    @Message("Keepers lost")
    String lost();

    @Message("Numbers of animals: these, and all that are known to live with one of them, would be gone.")
    String lostHint();

    @Message("Room for litters")
    String capacity();

    @Message("One a line: number of an animal, and how many litters its collection would take.")
    String capacityHint();

    @Message("Finer")
    String finer();

    @Message("Litters, exactly")
    String littersExactly();

    @Message("In place of at most.")
    String littersExactlyHint();

    @Message("Young wanted in all")
    String youngInAll();

    @Message(
            "Spread over the litters as does most good; say the exact number of litters too. Each litter counts as certain then.")
    String youngInAllHint();

    @Message("Chance of a litter")
    String chance();

    @Message("0.01 to 1. Empty: 0.7 (common practice, no source).")
    String chanceHint();

    @Message("Litters of one male at most")
    String littersOfMale();

    @Message("Empty: 2.")
    String littersOfMaleHint();

    @Message("Known ancestry at least")
    String leastKnown();

    @Message("0 to 1: animals of which less is known are left out. Empty: 0.")
    String leastKnownHint();

    @Message("Old animals")
    String lookAhead();

    @Message("count for less, so that their genes are handed on in time")
    String lookAheadYes();

    @Message("count like every other")
    String lookAheadNo();

    @Message("Whether the plan looks ahead.")
    String lookAheadHint();

    @Message("Seed of the search")
    String seed();

    @Message("The same seed gives the same plan. Empty: 1.")
    String seedHint();

    @Message("Have it computed")
    String compute();

    @Message("It is being computed")
    String beingComputed();

    @Message("gene diversity {value} so far")
    String bestSoFar(String value);

    @Message("no plan exceeds {value}")
    String noneExceeds(String value);

    @Message("Stop")
    String stop();

    @Message("The best plan so far is kept, and may be issued. The page looks again by itself.")
    String stopHint();

    @Message("Begun on {day} at {time}.")
    String startedOn(String day, String time);

    @Message("No plan keeps all of this")
    String impossible();

    @Message("These contradict each other; leave one of them out.")
    String impossibleMeans();

    @Message("It failed; the log of the server says why. Have it computed again, or tell the administrator.")
    String failed();

    @Message("Issue this plan")
    String issue();

    @Message(
            "From then on it is in force, and keepers are asked for their answers. It is never changed; another one that follows it takes its place.")
    String issueHint();

    @Message("It has founders that do not exist, and cannot be issued. Change it, and have it computed without them.")
    String imaginedHint();

    @Message("Change and compute again")
    String changeAndCompute();

    @Message("Years ahead")
    String lookAheadFrom();

    @Message("Side by side")
    String sideBySide();

    @Message("Hold it against another draft")
    String besideAnother();

    @Message("Figure")
    String figure();

    @Message("This draft")
    String thisDraft();

    @Message("Plan in force")
    String planInForce();

    @Message("The other draft")
    String otherDraft();

    @Message("Pairs, and young to keep")
    String pairsKeep();

    @Message("not in it")
    String notInIt();

    @Message("Years ahead")
    String outlookTitle();

    @Message(
            "What the years to come may bring if this is followed, and the seasons after it go on like it. A reckoning, and no promise.")
    String outlookLede();

    @Message("Seasons")
    String seasons();

    @Message("1 to 30.")
    String seasonsHint();

    @Message("Years from one to the next")
    String yearsBetween();

    @Message("0.25 to 5.")
    String yearsBetweenHint();

    @Message("Gene diversity not to be lost")
    String target();

    @Message("0.01 to 1; when it is passed is told. Empty: none.")
    String targetHint();

    @Message("Litters in each season")
    String littersEach();

    @Message("Empty: as many as in the plan.")
    String littersEachHint();

    @Message("Animals that can be kept")
    String places();

    @Message("Empty: as many as are alive.")
    String placesHint();

    @Message("Animals breed until the age of (years)")
    String breedsUntil();

    @Message("Empty: as the profile of the population says.")
    String breedsUntilHint();

    @Message("New founders held against none")
    String founders();

    @Message("1 to 20.")
    String foundersHint();

    @Message("Look ahead")
    String reckon();

    @Message("Gene diversity in the years ahead")
    String ahead();

    @Message(
            "If as many young come as are expected; and with litters drawn by lot that may fail, with the range of nine courses in ten.")
    String aheadShows();

    @Message("as expected")
    String expected();

    @Message("drawn by lot, mean")
    String drawn();

    @Message("Years from today")
    String years();

    @Message("nine courses in ten")
    String nineOfTen();

    @Message("projected")
    String projected();

    @Message("After this season")
    String afterThisSeason();

    @Message("{mean}; in nine of ten courses {low} to {high}")
    String between(String mean, String low, String high);

    @Message("Falls below {target}")
    String falls(String target);

    @Message("in about {years} years")
    String inYears(String years);

    @Message("nine of ten courses: {soonest} to {latest} years")
    String betweenYears(String soonest, String latest);

    @Message("beyond the seasons looked at")
    String guessed();

    @Message("not in these years")
    String doesNotFall();

    @Message("{more} more at the end: {diversity}")
    String moreAtTheEnd(String more, String diversity);

    @Message("below the target in about {years} years")
    String targetIn(String years);

    @Message("Founders whose genes hang on few")
    String lastChances();

    @Message("Founder")
    String founder();

    @Message("Share of the genes")
    String share();

    @Message("May hand them on")
    String carriers();

    @Message("Lost without their litters")
    String lostWithout();

    @Message("Chance that nothing is left")
    String chanceOfLoss();

    @Message("last season")
    String lastOne();

    @Message("What this assumes")
    String assumptions();

    @Message
    String state(LitterState state);

    @Message
    String doing(Doing doing);

    @Message
    String step(DraftView.Doing step);

    @Message
    String answer(Answer answer);

    @Message
    String reason(AnswerReason reason);

    @Message
    String side(Side side);

    @Message
    String came(What came);

    @Message
    String draftState(DraftState draftState);
}
