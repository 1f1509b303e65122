using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>The chances that decide what an act costs. They need not sum to one.</summary>
/// <param name="All">Everything.</param>
/// <param name="Subject">Late blight is there.</param>
/// <param name="Leading">Late blight is not there and the cause that would be advised for is.</param>
internal readonly record struct Masses(double All, double Subject, double Leading);

/// <summary>The losses of the three acts for a purpose. The unit is a false alarm in a market field.</summary>
internal sealed class Losses(LossDocument document)
{
    public double Act(Masses m) => (m.Subject * document.Act.LateBlight) + ((m.All - m.Subject) * document.Act.Other);

    public double Advise(Masses m) =>
        (m.Subject * document.Advise.LateBlight) + (m.Leading * document.Advise.Right) + ((m.All - m.Subject - m.Leading) * document.Advise.Other);

    public double SendOn(Masses m) => (m.Subject * document.SendOn.LateBlight) + ((m.All - m.Subject) * document.SendOn.Other);

    public double Of(Advice act, Masses m) => act switch
    {
        Weighing.Advice.Act => Act(m),
        Weighing.Advice.Advise => Advise(m),
        _ => SendOn(m),
    };

    /// <summary>The act that loses least; of equals the more careful.</summary>
    public Advice Best(Masses m, bool mayAdvise)
    {
        var best = Weighing.Advice.Act;
        if (SendOn(m) < Of(best, m)) best = Weighing.Advice.SendOn;
        if (mayAdvise && Advise(m) < Of(best, m)) best = Weighing.Advice.Advise;
        return best;
    }
}
