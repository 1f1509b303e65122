using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Speaking;

/// <summary>What to do, with the cautions that go with it.</summary>
public static class AdviceWords
{
    private const string HeaterFault = "fumigant-or-heater-fault";

    /// <summary>The advice, then the cautions, in the order in which they matter.</summary>
    public static IEnumerable<string> Sentences(Case weighed, Answer answer, Speech speech)
    {
        yield return First(answer, speech);
        if (answer.Advice == Advice.Act) yield return speech.Say("care.isolate");
        if (answer.Advice is Advice.Act or Advice.Advise) yield return speech.Say("care.licensed");
        var knowledge = weighed.Knowledge;
        foreach (var regulated in answer.Causes.Where(chance => chance.Cause.Regulated && chance.Probability >= knowledge.Document.Regulated.Chance))
        {
            yield return speech.Say("care.regulated", speech.Name(regulated.Cause));
        }

        switch (answer.Standing)
        {
            case Standing.Confirmed:
                yield return speech.Say(answer.LateBlight.Cause.Regulated ? "care.authority-orders" : "care.destruction");
                yield return speech.Say("care.food");
                break;
            case Standing.Likely:
                yield return speech.Say("care.no-destruction");
                yield return speech.Say("care.until-answer");
                yield return speech.Say("care.food");
                break;
            case Standing.Open:
                yield return speech.Say("care.no-destruction");
                yield return speech.Say("care.until-answer");
                break;
            case Standing.Unlikely:
                if (answer.Advice == Advice.Act) yield return speech.Say("care.no-destruction");
                yield return speech.Say("care.until-answer");
                yield return speech.Say("care.no-leave");
                break;
            default:
                yield return speech.Say("care.not-found");
                yield return speech.Say("care.no-leave");
                break;
        }

        if (UsesChamber(weighed, answer)) yield return speech.Say("care.chamber");
        if (weighed.Looks.Any(look => look.States.Any(state => look.Character.States[state] == HeaterFault))) yield return speech.Say("care.heater");
    }

    /// <summary>What to do about a cause where no sample is at hand, then the cautions that hold for it whatever the sample.</summary>
    public static IEnumerable<string> Sentences(Cause cause, Speech speech)
    {
        bool isSubject = cause == speech.Knowledge.Subject;
        yield return speech.Advice(cause);
        if (isSubject) yield return speech.Say("care.isolate");
        yield return speech.Say("care.licensed");
        if (cause.Regulated) yield return speech.Say("care.regulated", speech.Name(cause));
        yield return speech.Say("care.no-destruction");
        if (isSubject) yield return speech.Say("care.food");
        else yield return speech.Say("care.no-leave");
    }

    private static string First(Answer answer, Speech speech)
    {
        switch (answer.Advice)
        {
            case Advice.Act:
                return speech.Say("do.act");
            case Advice.Hold:
                return speech.Say("do.hold", speech.Name(answer.NextLooks[0].Character), speech.Word($"way.{answer.NextLooks[0].How.Word()}"));
            case Advice.SendOn:
                return speech.Say("do.send-on");
            default:
                var leading = answer.Causes.First(chance => chance.Cause != answer.LateBlight.Cause).Cause;
                return speech.Say("do.advise", speech.Name(leading), speech.Advice(leading));
        }
    }

    private static bool UsesChamber(Case weighed, Answer answer) =>
        weighed.Looks.Any(look => look.Surface == Surface.MoistChamber)
        || (answer.Advice == Advice.Hold && answer.NextLooks[0].How == Way.MoistChamber);
}
