using BrakeBalance.Balance;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Rules;

/// <summary>Holds a computed car against the rules on stopping distance, sound and with something failed.</summary>
/// <remarks>
/// Each rule's greatest pedal force is used, or less where an axle would lock before; peak adhesion 0.9; brakes cold as the file has
/// them. A computation is no test and no approval. With the engine off the first application is the one that counts: 49 CFR 571.135
/// S7.7.3 (g) (read) wants every reservoir fully charged at the beginning of each of its six stops. Sources: see
/// <see cref="EffectivenessRule"/>.
/// </remarks>
public static class EffectivenessRules
{
    /// <summary>
    /// Every rule's verdict, over all load cases of the car; where a rule is tested at gross weight only, in the heaviest.
    /// </summary>
    /// <param name="vehicle">The car.</param>
    /// <returns>One verdict a rule; not applicable where the car's file or this assembly cannot answer.</returns>
    public static IReadOnlyList<RuleVerdict> Check(Vehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        LoadCase heaviest = vehicle.LoadCases.MaxBy(load => load.Mass)!;
        Dictionary<(double Newtons, double Speed), IReadOnlyList<FailureOutcome>> known = [];
        IReadOnlyList<FailureOutcome> Outcomes(FailureConditions conditions)
        {
            (double Newtons, double) key = (conditions.PedalForce.Newtons, conditions.Speed.MetersPerSecond);
            return known.TryGetValue(key, out IReadOnlyList<FailureOutcome>? outcomes) ? outcomes
                : known[key] = [.. vehicle.LoadCases.SelectMany(load => FailureAnalysis.Of(vehicle, load, conditions, failure =>
                    EffectivenessRule.All.Any(rule =>
                        rule.GreatestPedalForce.Newtons == key.Newtons && rule.LooksAt(failure.Id, load == heaviest))))];
        }

        return [.. EffectivenessRule.All.Select(rule => Judge(vehicle, rule, heaviest.Name, Outcomes))];
    }

    private static RuleVerdict Judge(Vehicle vehicle, EffectivenessRule rule, string heaviest,
        Func<FailureConditions, IReadOnlyList<FailureOutcome>> outcomesFor)
    {
        string title = rule.TestSpeed is { } at && rule.LongestDistance(at) is { } limit
            ? $"{rule.Title}: {InBoth.Way(limit)} from {InBoth.Text(at)} with at most {InBoth.Text(rule.GreatestPedalForce)}"
            : rule.Title;
        string source = $"{rule.Section} ({rule.Source})";
        RuleVerdict NotApplicable(string why) => new(rule.Id, title, source, RuleOutcome.NotApplicable, null, "", why);
        if (rule.TestSpeed is not { } speed || rule.LongestDistance(speed) is not { } longest || rule.Cases.Count == 0)
        {
            return NotApplicable("This failure or speed is not computed here.");
        }

        if (vehicle.Control is null)
        {
            return NotApplicable("The file does not say what lies between foot and line pressure.");
        }

        var conditions = new FailureConditions { PedalForce = rule.GreatestPedalForce, Speed = speed };
        FailureOutcome[] outcomes = [.. outcomesFor(conditions)
            .Where(outcome => rule.LooksAt(outcome.Case.Id, outcome.LoadCase == heaviest))];
        if (outcomes.Length == 0)
        {
            return NotApplicable("The car has no such part, or its stored energy is not described.");
        }

        FailureOutcome worst = outcomes.MaxBy(outcome => outcome.Distance?.FromFirstTouch.Meters ?? double.PositiveInfinity)!;
        string where = $"{worst.LoadCase}, {worst.Case.Name}";
        if (worst.Distance is not { } distance)
        {
            return new(rule.Id, title, source, RuleOutcome.Fail, -1, where, $"Fail: {where} leaves nothing that brakes.");
        }

        double margin = (longest - distance.FromFirstTouch) / longest;
        string bound = worst.Bound switch
        {
            RateBound.Road => $"the first axle locks at {InBoth.Text(worst.ForceUsed)}",
            RateBound.Travel => "the pedal comes to its end",
            _ => InBoth.Text(worst.ForceUsed),
        };
        return new(rule.Id, title, source, margin >= 0 ? RuleOutcome.Pass : RuleOutcome.Fail, margin, where,
            Invariant.Text($"{(margin >= 0 ? "Pass" : "Fail")}: worst {where}, {InBoth.Way(distance.FromFirstTouch)} "
                + $"at a braking rate of {worst.RateAtForce:0.00} ({bound}); {InBoth.Way(longest)} allowed."));
    }
}
