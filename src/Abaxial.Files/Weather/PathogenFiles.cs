using System.Collections.Immutable;
using Abaxial.Weather.Models;

namespace Abaxial.Files.Weather;

/// <summary>Reads the parameters of a pathogen that a user supplies.</summary>
public static class PathogenFiles
{
    private static readonly ImmutableArray<string> Known = ["name", "source", "tmin", "topt", "tmax", "wmin", "wmax", "d50", "latent"];

    /// <summary>Reads a set.</summary>
    /// <param name="text">YAML: name, source, tmin, topt, tmax (°C), wmin, wmax, d50 (hours), and latent, a list of celsius and hours.</param>
    /// <param name="fileName">The file's name, for the refusal.</param>
    /// <param name="refusal">Why it cannot be read; null where it can.</param>
    /// <returns>The set; null where it cannot be read.</returns>
    public static PathogenSet? Read(TextReader text, string fileName, out RecordRefusal? refusal)
    {
        ArgumentNullException.ThrowIfNull(text);
        try
        {
            refusal = null;
            return Read(YamlFields.Read(text), fileName);
        }
        catch (RefusedException refused)
        {
            refusal = refused.In(fileName);
            return null;
        }
    }

    private static PathogenSet Read(YamlFields yaml, string fileName)
    {
        yaml.RequireKnown(Known);
        string name = yaml.Text("name") ?? Path.GetFileNameWithoutExtension(fileName);
        if (yaml.Text("source") is { } source) name = $"{name} ({source})";
        bool hasInfection = Known.AsSpan(2, 6).ToArray().Any(yaml.Has);
        var set = new PathogenSet(name) { Infection = hasInfection ? InfectionOf(yaml) : null, LatentPeriods = LatentOf(yaml) };
        return set.Infection is null && set.LatentPeriods.IsEmpty ? throw yaml.Wrong("tmin", "parameters of infection, or a table of latent periods") : set;
    }

    private static InfectionParameters InfectionOf(YamlFields yaml)
    {
        double least = yaml.RequireNumber("tmin"), best = yaml.RequireNumber("topt"), most = yaml.RequireNumber("tmax");
        if (!(least < best && best < most)) throw yaml.Wrong("topt", "a temperature between tmin and tmax");
        double needed = yaml.RequireNumber("wmin"), mostNeeded = yaml.RequireNumber("wmax"), joining = yaml.Number("d50") ?? 0;
        if (!(needed > 0)) throw yaml.Wrong("wmin", "hours above 0");
        if (!(mostNeeded >= needed)) throw yaml.Wrong("wmax", "hours not below wmin");
        if (!(joining >= 0)) throw yaml.Wrong("d50", "hours from 0");
        return new InfectionParameters(least, best, most, needed, mostNeeded, joining);
    }

    private static ImmutableArray<(double Celsius, double Hours)> LatentOf(YamlFields yaml)
    {
        var points = ImmutableArray.CreateBuilder<(double Celsius, double Hours)>();
        foreach (var item in yaml.List("latent"))
        {
            item.RequireKnown("celsius", "hours");
            double celsius = item.RequireNumber("celsius"), hours = item.RequireNumber("hours");
            if (points.Count > 0 && !(celsius > points[^1].Celsius)) throw item.Wrong("celsius", "temperatures that rise");
            if (!(hours > 0)) throw item.Wrong("hours", "hours above 0");
            points.Add((celsius, hours));
        }

        return points.Count == 1 ? throw yaml.Wrong("latent", "two temperatures or more") : points.ToImmutable();
    }
}
